// Package svgreport draws the leaves of a sheet and its first page as SVG: to be set into a menu,
// a slide or a poster without loss; and the pieces of which a page makes its pictures.
//
// # Model
//
// A drawing has one width; its height follows from what is on it. Text stays text, so that it
// can be searched, copied and read aloud, and the drawing names itself (title, role="img").
// Colours and order are those of the page; what nobody has determined is hatched and says so
// in words. Nothing is fetched and nothing runs. Texts are escaped as XML wants.
//
// A piece (axis.go) is a bar, a scale, an axis, a curve, a map or the mass of a pot: places across
// are per cent of its width, so that its type keeps its size on a phone and on paper. Its colours
// are classes (palette.go), and what it shows stands in words beside it.
//
// # Limits
//
// Fonts are the reader's, and SVG 1.1 breaks no lines: lines are broken by how wide letters
// are on average, with some room to spare. A word without blanks that is wider than its column
// is broken between letters.
package svgreport
