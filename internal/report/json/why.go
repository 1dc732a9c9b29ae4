package jsonreport

import (
	"io"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/sheet"
)

type driver struct {
	Cause  estimate.Cause `json:"cause"`
	Name   string         `json:"name"`
	Share  number         `json:"share"`
	Raises bool           `json:"raises"`
}

type whyDocument struct {
	head
	Constituent constituent.ID            `json:"constituent"`
	Serving     any                       `json:"serving"`
	Shares      map[estimate.Cause]number `json:"shares"`
	Rest        number                    `json:"rest"`
	Inputs      []driver                  `json:"inputs"`
	ByKin       []byKin                   `json:"by_kin,omitempty"` // foods of which nobody measured it
}

// Why writes sipsum.why/1: what the spread of a figure of the serving comes
// from.
func Why(w io.Writer, s *sheet.Sheet) error {
	d := s.Assay.Drivers
	doc := whyDocument{
		head: headOf("sipsum.why/1", s), Constituent: d.Figure.Constituent.ID, Serving: figureOf(d.Figure.Result),
		Shares: map[estimate.Cause]number{}, Rest: number(d.Rest), Inputs: []driver{},
	}
	for _, cause := range estimate.Causes {
		if share, ok := d.Shares[cause]; ok || cause != estimate.Doubts {
			doc.Shares[cause] = number(share)
		}
	}
	for _, in := range d.Inputs {
		doc.Inputs = append(doc.Inputs, driver{in.Cause, in.Name, number(in.Share), in.Raises})
	}
	for _, c := range d.Figure.ByKin() {
		doc.ByKin = append(doc.ByKin, byKin{c.Food, c.SourceNote})
	}
	return write(w, doc)
}

// byKin is a food that has a constituent by its kin, and the rows of these.
type byKin struct {
	Food string `json:"food"`
	Why  string `json:"why"`
}

type narrowing struct {
	Constituent constituent.ID `json:"constituent"`
	By          number         `json:"by"`
}

type suggestion struct {
	Of      *string     `json:"of"` // null: the finished drink
	Reading string      `json:"reading"`
	Expect  interval    `json:"expect"`
	Narrows []narrowing `json:"narrows"`
	Score   number      `json:"score"`
}

// Next writes sipsum.next/1: the readings not yet taken, most useful first, and what titrations would
// tell; of a pot alone its titration.
func Next(w io.Writer, s *sheet.Sheet, pot string) error {
	doc := struct {
		head
		Readings   []suggestion  `json:"readings"`
		Titrations []outlookForm `json:"titrations"`
	}{headOf("sipsum.next/1", s), []suggestion{}, each(sheet.Outlooks(s, pot), outlookOf)}
	for _, g := range s.Assay.Suggestions {
		out := suggestion{
			Reading: g.Reading, Score: number(g.Score), Narrows: []narrowing{},
			Expect: interval{number(g.Expect.Mean), number(g.Expect.SD), number(g.Expect.Low), number(g.Expect.High), g.Unit, ""},
		}
		if g.Of != "" {
			out.Of = &g.Of
		}
		for _, n := range g.Narrows {
			out.Narrows = append(out.Narrows, narrowing{n.Constituent.ID, number(n.By)})
		}
		doc.Readings = append(doc.Readings, out)
	}
	return write(w, doc)
}
