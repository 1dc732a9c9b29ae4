package markdownreport

import (
	"io"

	"sipsum/internal/sheet"
)

// Sheet prints all that stands on the sheet of a drink. A picture is told by its table.
func Sheet(w io.Writer, s *sheet.Paper) error {
	var p page
	p.line("# ", escape(s.Title))
	pieces := append([]string{}, s.Beside[:1]...)
	for _, x := range s.Below {
		pieces = append(pieces, x.Sentence())
	}
	p.paragraph("*" + escape(s.Label) + "* · " + joined(append(pieces, s.Beside[1:]...), " · "))
	for _, x := range s.Senses {
		p.sense(x)
	}
	for _, list := range [][]sheet.Block{s.Brief, {s.Build}, s.Guest, s.Card} {
		for i := range list {
			p.blockWithPicture(&list[i])
		}
	}
	for _, x := range s.Annex {
		p.paragraph("# " + escape(x.Heading))
		for i := range x.Blocks {
			p.blockWithPicture(&x.Blocks[i])
		}
	}
	p.paragraph("---")
	p.paragraph(joined(s.Foot, " "))
	_, err := io.WriteString(w, p.text.String())
	return err
}

// sense prints a sense: its figures, its pictures as tables, and the rest.
func (p *page) sense(x sheet.SensePicture) {
	p.paragraph("## " + escape(x.Name))
	p.line()
	for _, list := range [][]sheet.Written{x.Figures, x.Further} {
		for _, f := range list {
			p.line("- ", escape(f.Sentence()))
		}
	}
	for _, line := range x.Lines {
		p.line("- ", escape(line))
	}
	for _, picture := range x.Pictures {
		p.line()
		p.grid(picture.Table())
	}
}

func (p *page) blockWithPicture(b *sheet.Block) {
	p.block(b)
	if b.Picture != nil {
		p.grid(b.Picture.Table())
	}
}
