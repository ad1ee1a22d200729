// Package strict reads JSON for the programs under examples and refuses whatever
// is not as the Go type has it, all of it at once: text that is no quantity,
// values of a wrong type, members that are unknown, doubled or missing. Every
// fault has the path to its place in the document.
//
// A field without omitzero or omitempty in its tag is needed. A pointer tells a
// value that was left out from one that is zero. Fields are structs, lists,
// true or false, numbers, and whatever reads itself from text; null stands for
// nothing.
package strict
