// Package house pins the rules of the house by its tests: which package may
// import which, what stands at the top level, and that every entry point has a
// runnable example. It holds no code of its own.
//
// The tests read the source tree and start no process. Each rule is a function
// of a file system, so that it can be shown a bad tree as well as ours.
package house
