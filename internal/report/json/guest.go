package jsonreport

import (
	"io"

	"sipsum/internal/sheet"
)

// leaf is a card for guests or for the stage, in the words that are printed.
type leaf struct {
	Kind     string   `json:"kind"`
	Language string   `json:"language"`
	Title    string   `json:"title"`
	Below    []string `json:"below"`
	Blocks   []block  `json:"blocks"`
	Foot     []string `json:"foot"`
}

type block struct {
	Heading string       `json:"heading,omitempty"`
	Role    sheet.Role   `json:"role,omitempty"`
	Figures []leafFigure `json:"figures,omitempty"`
	Lines   []leafLine   `json:"lines,omitempty"`
	Table   *leafTable   `json:"table,omitempty"`
}

type leafFigure struct {
	Label string `json:"label"`
	Text  string `json:"text"`
}

type leafLine struct {
	Lead   string `json:"lead,omitempty"`
	Strong string `json:"strong,omitempty"`
	Text   string `json:"text,omitempty"`
	Source string `json:"source,omitempty"`
}

type leafTable struct {
	Caption string    `json:"caption"`
	Above   []string  `json:"above,omitempty"`
	Head    []string  `json:"head"`
	Rows    []leafRow `json:"rows"`
}

type leafRow struct {
	Label string   `json:"label"`
	Cells []string `json:"cells"` // of the last columns
}

// HandedOut writes sipsum.card/1 with "leaf": the card as it is handed out beside the drink.
func HandedOut(w io.Writer, s *sheet.Sheet, l *sheet.Leaf) error {
	return write(w, struct {
		head
		cardBody
		Leaf leaf `json:"leaf"`
	}{headOf("sipsum.card/1", s), cardBodyOf(s), leafOf(l)})
}

func leafOf(l *sheet.Leaf) leaf {
	return leaf{l.Kind, l.Language, l.Title, each(l.Below, itself), each(l.Blocks, blockOf), each(l.Foot, itself)}
}

func itself(text string) string { return text }

func blockOf(b sheet.Block) block {
	out := block{
		Heading: b.Heading, Role: b.Role,
		Figures: each(b.Figures, func(f sheet.Figured) leafFigure { return leafFigure(f) }),
		Lines:   each(b.Lines, func(l sheet.Line) leafLine { return leafLine(l) }),
	}
	if b.Grid != nil {
		out.Table = &leafTable{b.Grid.Caption, b.Grid.Lead, b.Grid.Head, each(b.Grid.Rows, func(r sheet.GridRow) leafRow {
			return leafRow{r.Label, each(r.Cells, func(c sheet.GridCell) string { return c.Text })}
		})}
	}
	return out
}
