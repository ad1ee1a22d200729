// Package pumpset reads what a crew took down at a coupled pump and motor, solves
// it with the library, and shows what came out: as a report in words, as a record
// for another program, as drawings, and as a page that prints on one sheet. The
// command of this name and the page in the browser are its front ends.
package pumpset
