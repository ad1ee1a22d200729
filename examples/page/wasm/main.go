//go:build js && wasm

// Command wasm is what runs behind the page: the library, and the job that it is
// asked about, compiled for the browser. It gives JavaScript one function.
//
//	collinear(job, units) -> {sheet, record, faults: [{code, path, value, want}]}
//
// The job is the text of a document as JOB.md describes it, units is "metric",
// "inch" or "" for what the job says. A job that is sound comes back as the sheet, a
// piece of HTML, and as the record, a JSON document; one that is refused comes back
// as its faults, with nothing else.
package main

import "syscall/js"

func main() {
	js.Global().Set("collinear", js.FuncOf(collinear))
	select {} // the page calls for as long as it is open
}

// collinear is called by JavaScript with anything at all.
func collinear(_ js.Value, args []js.Value) any {
	if len(args) != 2 || !isText(args[0]) || !isText(args[1]) {
		return refused(badCall)
	}
	sheet, record, err := answer([]byte(args[0].String()), args[1].String())
	if err != nil {
		return refused(err)
	}
	return map[string]any{"sheet": sheet, "record": record, "faults": []any{}}
}

var object, text = js.Global().Get("Object"), js.Global().Get("String")

// isText tells text from anything else that JavaScript has. Value.Type would panic
// at a BigInt. An object stays what it is when it is made one; text becomes an object
// of its own kind.
func isText(v js.Value) bool {
	boxed := object.Invoke(v)
	return !boxed.Equal(v) && boxed.InstanceOf(text)
}

// refused is the answer where there is nothing but what is wrong.
func refused(err error) any {
	var list []any
	for _, f := range faults(err) {
		list = append(list, map[string]any{"code": string(f.Code), "path": f.Path, "value": f.Value, "want": f.Want})
	}
	return map[string]any{"sheet": "", "record": "", "faults": list}
}
