package sheet

import (
	"strconv"
	"strings"
)

// notes explain a printed working.
const notes = "Numbers from lines above are put in as they were rounded there; the answers go on with all their digits. " +
	"Sources are marked (read) where the work itself was seen, (second-hand) where others quote it."

// caution ends every printed working.
const caution = "A worked number is no permission to start or to run a machine. Isolate and lock out the driver before " +
	"loosening a coupling or a bolt; the makers' instructions, local codes and licensed practice come first."

// Text returns the working as plain text, a paragraph for each line, with the usual
// caution below.
func (w Working) Text(s System) string {
	var b strings.Builder
	b.WriteString(w.title + "\n")
	for i, step := range w.Steps(s) {
		b.WriteString("\n" + strconv.Itoa(i+1) + ". " + step.Sought + "  [" + step.ID + "]\n")
		b.WriteString("   " + step.Formula + "\n")
		b.WriteString("   = " + step.Filled + "\n")
		b.WriteString("   = " + step.Answer + "   (exactly " + step.Exact + ")\n")
		b.WriteString("   " + step.Source + "\n")
	}
	b.WriteString("\n" + notes + "\n\n" + caution + "\n")
	return b.String()
}

// Markdown returns the working as a table in Markdown, with the usual caution below.
func (w Working) Markdown(s System) string {
	var b strings.Builder
	b.WriteString("## " + escaped(w.title) + "\n\n")
	b.WriteString("| | sought | formula | filled in | answer | exactly | source | line |\n")
	b.WriteString("|---:|---|---|---|---|---|---|---|\n")
	for i, step := range w.Steps(s) {
		b.WriteString("| " + strconv.Itoa(i+1) + " |")
		for _, cell := range []string{step.Sought, step.Formula, step.Filled, step.Answer, step.Exact, step.Source, step.ID} {
			b.WriteString(" " + escaped(cell) + " |")
		}
		b.WriteString("\n")
	}
	b.WriteString("\n" + notes + "\n\n" + caution + "\n")
	return b.String()
}

// markdown keeps what Markdown would take for its own.
var markdown = strings.NewReplacer(
	`\`, `\\`, "|", `\|`, "*", `\*`, "_", `\_`, "`", "\\`", "<", `\<`, "[", `\[`, "]", `\]`, "#", `\#`, "\r", " ", "\n", " ")

func escaped(s string) string { return markdown.Replace(s) }
