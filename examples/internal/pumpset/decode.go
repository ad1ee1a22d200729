package pumpset

import "example.org/collinear/examples/internal/strict"

// MaxSize is the length of a job that is read, in bytes.
const MaxSize = 1 << 20

// maxDepth bounds objects and lists inside one another; a job has eight.
const maxDepth = 16

// Read reads a job and refuses everything about the document that is not as
// JOB.md says, all of it at once. What the job says is looked at later, by
// Solve.
func Read(data []byte) (Job, error) {
	var j Job
	if err := strict.Read(data, strict.Bounds{Size: MaxSize, Depth: maxDepth}, "a job", &j); err != nil {
		return Job{}, err
	}
	return j, nil
}
