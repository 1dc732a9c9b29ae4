package jsonreport

import (
	"io"

	"sipsum/internal/sheet"
)

// logBatch is a component as it is logged when it is made.
type logBatch struct {
	Name     string  `json:"name"`
	MassG    number  `json:"mass_g"`
	UseByDay *number `json:"use_by_day"` // null: nobody says
	KeepAtC  *number `json:"keep_at_c"`
	Control  bool    `json:"control"`
	Cooled   bool    `json:"cooled"`
}

type cooled struct {
	FromC       number `json:"from_c"`
	FirstToC    number `json:"first_to_c"`
	FirstWithin number `json:"first_within_h"`
	ThenToC     number `json:"then_to_c"`
	InAll       number `json:"in_all_h"`
}

type hotHolding struct {
	Rules string `json:"rules"`
	AtC   number `json:"at_c"`
}

// Log writes sipsum.log/1.
func Log(w io.Writer, s *sheet.Sheet) error {
	l := s.Log()
	return write(w, struct {
		head
		Batches []logBatch      `json:"batches"`
		Cooling cooled          `json:"cooling"`
		HeldHot []hotHolding    `json:"held_hot"`
		Logged  []loggedReading `json:"logged"` // what the bench log has of it
	}{
		headOf("sipsum.log/1", s),
		each(l.Batches, func(b sheet.Batch) logBatch {
			return logBatch{b.Name, number(b.Grams), said(b.Days), said(b.Cold), b.Control, b.Cooled}
		}),
		cooled{number(l.From), number(l.First), number(l.Within), number(l.Cold), number(l.InAll)},
		each(l.Hot, func(h sheet.HotHolding) hotHolding { return hotHolding{h.Rules, number(h.Celsius)} }),
		loggedOf(s),
	})
}

// said gives a number of which 0 means that nobody says.
func said(x float64) *number {
	if x == 0 {
		return nil
	}
	n := number(x)
	return &n
}
