// Package graph draws the two pictures that handbooks reckon with: the graph of
// one plane, distances along the shafts to scale and misalignment exaggerated by a
// factor that is told, and the readings of a sweep against the clock, with the sine
// that fits them and what it leaves over.
//
// Drawings are black on white and sized in millimetres of paper. What a line means
// is told by how it is drawn, and by words beside it.
//
// The package draws with lines, polygons and text of SVG, by its own few lines of
// code: a plotting library was tried, and made a program for the browser five
// megabytes larger.
package graph
