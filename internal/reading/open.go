package reading

import (
	"fmt"

	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/untold"
)

// tellOpen lets a °Brix or a density tell how much of what nobody has told apart is water, draw by
// draw: the recipe says nothing of it, so the reading is all that is known. It gives the kind of the
// reading that told it; empty if none did, as where no share of water reads what was read.
func (b *Bench) tellOpen(pot *ledger.Pot, read []*drink.Measured) (kind string) {
	o := untold.WaterOf(pot)
	if o == nil {
		return ""
	}
	for _, m := range read {
		for _, given := range []struct {
			kind string
			q    *drink.Quantity
		}{{amount.ReadBrix, m.Brix}, {amount.ReadDensity, m.Density}} {
			if given.q == nil {
				continue
			}
			want := b.shown(m, *given.q, given.kind).column
			if o.Solve(func() []float64 { return b.Expected(pot, given.kind) }, want) {
				b.note(note.Note{Kind: "reading tells water", Text: fmt.Sprintf("%s: %s: nobody has stated the water of %s, and this reading tells it: %s g",
					Reading{Path: m.Of()}.of(), given.kind, note.Listed(o.Foods), note.Number(o.Told()))})
				return given.kind
			}
		}
	}
	return ""
}
