package adapter

import (
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/thermal"
)

type coldTargetInput struct {
	Stationary position `json:"stationary"`
	Movable    position `json:"movable"`
}

func coldTarget(in *coldTargetInput, f *strict.Faults) position {
	return told(thermal.ColdTarget(in.Stationary.estimate(f, "/stationary"), in.Movable.estimate(f, "/movable")))
}

type runningInput struct {
	Cold       position `json:"cold"`
	Stationary position `json:"stationary"`
	Movable    position `json:"movable"`
}

func running(in *runningInput, f *strict.Faults) position {
	cold, stationary, movable := in.Cold.estimate(f, "/cold"), in.Stationary.estimate(f, "/stationary"), in.Movable.estimate(f, "/movable")
	return told(thermal.Running(cold, stationary, movable))
}
