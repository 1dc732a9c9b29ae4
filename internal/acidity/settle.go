package acidity

import (
	"slices"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/ledger"
)

// unmeasured is the tracer of what no table states of a row: grams of a constituent beside
// those in its column.
type unmeasured struct{ id constituent.ID }

func (u unmeasured) As() constituent.ID { return u.id }

// settled reports whether a reading has spoken of a row's ions: then what tables
// leave out of it is carried by the pot and not drawn again.
func settled(pot *ledger.Pot, row int) bool {
	return slices.ContainsFunc(pot.Traced(row), func(t ledger.Traced) bool { return !isCalibration(t.Tracer) && !ledger.OfPast(t.Tracer) })
}

// Settle makes the rows of a pot carry what their tables leave out, as it was drawn
// (the streams are the foods', so it is what any other pot draws), for a reading to
// move.
func (lab *Laboratory) Settle(pot *ledger.Pot) {
	for row := range pot.Rows {
		if settled(pot, row) {
			continue
		}
		drawn := newIons(pot.N)
		lab.addUnmeasured(&drawn, pot, row)
		pot.Carry(row, UnmeasuredOf(Potassium))
		for _, id := range acid.Constituents() {
			if slices.Max(drawn.grams[id]) > 0 {
				copy(pot.Carry(row, UnmeasuredOf(id)), drawn.grams[id])
			}
		}
	}
}

// UnmeasuredOf is the tracer of what no table states of a constituent.
func UnmeasuredOf(id constituent.ID) ledger.Tracer { return unmeasured{id} }

// addSettled adds what a settled row carries; its calibrations are added by IonsOf.
func (in *Ions) addSettled(pot *ledger.Pot, row int) {
	for _, t := range pot.Traced(row) {
		switch of := t.Tracer.(type) {
		case unmeasured:
			to := in.grams[of.id]
			for d := range in.N {
				to[d] += t.Column[d]
			}
		case *Titration:
			in.addTitrated(of, t.Column)
		}
	}
}
