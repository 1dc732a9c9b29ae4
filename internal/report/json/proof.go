package jsonreport

import (
	"io"

	"sipsum/internal/proof"
)

type movedFigure struct {
	ID      string `json:"id"`
	Of      string `json:"of"`
	What    string `json:"what"`
	Pack    string `json:"pack"`
	Follows string `json:"follows"`
}

type hereForm struct {
	Differ []string `json:"differ"`
	Absent []string `json:"not_compared"`
}

// Verdict writes sipsum.verify/1.
func Verdict(w io.Writer, v *proof.Verdict) error {
	p := v.Pack.Pack
	var here *hereForm
	if v.Here {
		here = &hereForm{texts(v.Differ), texts(v.Absent)}
	}
	return write(w, struct {
		Schema      string        `json:"schema"`
		Program     string        `json:"program"`
		Proof       string        `json:"proof"`
		Of          string        `json:"pack_program"`
		Drink       string        `json:"drink"`
		Seed        uint64        `json:"seed"`
		Draws       int           `json:"draws"`
		Same        bool          `json:"same"`
		PrintedOnly bool          `json:"printed_only"`
		Figures     int           `json:"figures"`
		Stored      int           `json:"stored"`
		Rows        int           `json:"rows"`
		Broken      []string      `json:"broken"`
		Constants   []string      `json:"constants"`
		Failed      string        `json:"failed,omitempty"`
		Moved       []movedFigure `json:"moved"`
		Unproven    []string      `json:"unproven"`
		Here        *hereForm     `json:"here,omitempty"`
	}{
		"sipsum.verify/1", v.Program, p.Short, p.Program, p.Drink, p.Seed, p.Draws, v.Same(), !v.SameProgram(), len(p.Figures), v.Stored(), len(p.Rows),
		texts(v.Broken), texts(v.Constants), v.Failed, each(v.Moved, func(m proof.Moved) movedFigure { return movedFigure{m.ID, m.Of, m.What, m.Pack, m.Now} }), texts(p.Unproven), here,
	})
}

// texts gives a list that is never null.
func texts(list []string) []string { return append([]string{}, list...) }
