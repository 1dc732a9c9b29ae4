package textreport

import "io"

// Hit is a food that was found.
type Hit struct {
	ID      string
	Name    string
	Matched string // the name that was found, if it is another
	Near    bool   // no name has all the words
	Label   bool   // nor has any, and the label of this food does
}

// Hits prints the foods that a search found.
func Hits(w io.Writer, hits []Hit, st Style) error {
	p := newPage(st)
	if len(hits) == 0 {
		p.paragraph(0, 0, "Nothing found. Try fewer or shorter words: beginnings of words are enough.")
		return p.write(w)
	}
	switch {
	case hits[0].Near:
		p.line("No name has all the words. The nearest:")
	case hits[0].Label:
		p.line("No name has all the words. Foods whose labels have them:")
	}
	const most = 24 // longer codes push their own line only
	codes := 0
	for _, h := range hits {
		codes = max(codes, min(width(Clean(h.ID, mostName)), most))
	}
	for _, h := range hits {
		text := Clean(h.Name, mostName)
		if m := Clean(h.Matched, mostName); m != "" && m != text {
			text += " (" + m + ")"
		}
		p.hanging(left(Clean(h.ID, mostName), codes)+"  ", codes+2, text)
	}
	return p.write(w)
}
