package main

import "example.org/collinear/examples/internal/strict"

// The bounds of a job.
const (
	maxSize  = 1 << 20 // bytes
	maxDepth = 16      // objects and lists inside one another; a job has eight
)

// readJob reads a job and refuses everything about the document that is not as
// JOB.md says, all of it at once. What the job says is looked at later, by
// solve.
func readJob(data []byte) (job, error) {
	var j job
	if err := strict.Read(data, strict.Bounds{Size: maxSize, Depth: maxDepth}, "a job", &j); err != nil {
		return job{}, err
	}
	return j, nil
}
