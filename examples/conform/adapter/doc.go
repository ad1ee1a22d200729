// Package adapter answers the requests of the reference suite with this module,
// as testdata/PROTOCOL.md says: one line of JSON for each. It is also a worked
// example of such an adapter. It reads strictly, so that whatever is wrong with
// an input is refused with the path to it, calls the library, gives the
// library's faults the names of the wire, and prints its answers with all their
// digits.
//
// The files serve*.go hold what all operations share, the files op_*.go the
// operations. To add one, write a function of its own and add a line to
// operations.
package adapter
