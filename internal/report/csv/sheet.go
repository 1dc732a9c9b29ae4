package csvreport

import (
	"io"

	"sipsum/internal/sheet"
)

// Sheet prints all that stands on the sheet of a drink: what it is about, of what, and what it
// says. A picture is told by its table.
func Sheet(w io.Writer, p *sheet.Paper) error {
	rows := [][]string{{"name", "", text(p.Title)}}
	for _, piece := range p.Beside {
		rows = append(rows, []string{"size", "", text(piece)})
	}
	for _, x := range p.Below {
		rows = append(rows, []string{"size", "", text(x.Sentence())})
	}
	for _, s := range p.Senses {
		rows = append(rows, senseRows(s)...)
	}
	for _, list := range [][]sheet.Block{p.Brief, {p.Build}, p.Guest, p.Card} {
		for _, b := range list {
			rows = append(rows, blockRows(about(b), b)...)
		}
	}
	for _, s := range p.Annex {
		for _, b := range s.Blocks {
			under := text(s.Heading)
			if b.Heading != "" {
				under = text(s.Heading + ", " + b.Heading)
			}
			rows = append(rows, blockRows(under, b)...)
		}
	}
	return write(w, []string{"about", "what", "text"}, rows)
}

func senseRows(s sheet.SensePicture) [][]string {
	var rows [][]string
	for _, list := range [][]sheet.Written{s.Figures, s.Further} {
		for _, f := range list {
			words := f.Words
			f.Words = ""
			rows = append(rows, []string{text(s.Name), text(words), text(f.Sentence())})
		}
	}
	for _, x := range s.Pictures {
		rows = append(rows, gridRows(x.Table())...)
	}
	for _, line := range s.Lines {
		rows = append(rows, []string{text(s.Name), "", text(line)})
	}
	return rows
}

func blockRows(under string, b sheet.Block) [][]string {
	var rows [][]string
	for _, f := range b.Figures {
		rows = append(rows, []string{under, text(f.Label), text(f.Text)})
	}
	for _, line := range b.Lines {
		lead := line.Lead
		line.Lead = ""
		rows = append(rows, []string{under, text(lead), text(line.Sentence())})
	}
	if b.Grid != nil {
		rows = append(rows, gridRows(b.Grid)...)
	}
	if b.Picture != nil {
		rows = append(rows, gridRows(b.Picture.Table())...)
	}
	return rows
}
