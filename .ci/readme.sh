# For sourcing: reads the fenced blocks of README.md, so that what the README
# tells a reader to run is what gets run here.

# fenced LANG [AFTER] prints the first block of language LANG in README.md, or
# the first one after the first block of language AFTER.
fenced() {
	awk -v want="$1" -v after="${2-}" '
		inside && /^```[ \t]*$/ { if (hit) exit; inside = 0; next }
		inside                  { if (hit) print; next }
		/^```/ {
			lang = $0
			gsub(/^```[ \t]*|[ \t]+$/, "", lang)
			inside = 1
			hit = lang == want && (after == "" || passed)
			if (lang == after) passed = 1
		}
	' "$root/README.md"
}

# die says why and stops.
die() {
	printf '%s: %s\n' "${0##*/}" "$*" >&2
	exit 1
}
