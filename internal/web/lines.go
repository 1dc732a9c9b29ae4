package web

import "strings"

// differing are the lines in which two texts differ: all between what both begin and end with.
type differing struct {
	Before, After string // what the texts are called
	From          int    // the number of the first of them
	A, B          []string
}

// None reports whether the texts are alike.
func (d differing) None() bool { return len(d.A)+len(d.B) == 0 }

// difference sets a text against another; names are what the two are called.
func difference(a, b string, names [2]string) differing {
	x, y := linesOf(a), linesOf(b)
	from := 0
	for from < len(x) && from < len(y) && x[from] == y[from] {
		from++
	}
	x, y = x[from:], y[from:]
	for len(x) > 0 && len(y) > 0 && x[len(x)-1] == y[len(y)-1] {
		x, y = x[:len(x)-1], y[:len(y)-1]
	}
	return differing{names[0], names[1], from + 1, x, y}
}

func linesOf(text string) []string {
	return strings.Split(strings.ReplaceAll(text, "\r\n", "\n"), "\n")
}
