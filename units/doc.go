// Package units holds the quantities of shaft alignment and the one type of
// fault that the whole module reports.
//
// Every quantity is a type of its own, so that a length cannot be passed where
// a slope is wanted. Their text forms carry a unit and lose nothing on the way
// out and back in.
package units
