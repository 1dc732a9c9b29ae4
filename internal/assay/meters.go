package assay

import (
	"fmt"
	"slices"

	"sipsum/internal/drink"
	"sipsum/internal/ledger"
	"sipsum/internal/meter"
	"sipsum/internal/note"
	"sipsum/internal/reading"
)

// survey is a walk that asks what was read of its instruments.
type survey struct {
	several map[string]bool // the instruments that took more than one reading
	seen    []meter.Seen
}

// ask looks at the readings of a pot, and gives those that count before the instruments are found.
func (s *survey) ask(b *reading.Bench, pot *ledger.Pot, read []*drink.Measured) []*drink.Measured {
	seen, others := b.Survey(pot, read, func(name string) bool { return s.several[name] })
	s.seen = append(s.seen, seen...)
	return others
}

// findMeters draws the instruments of the shelf, and finds what they are off by where one took several
// readings: for that the drink is walked once without them. What was made with instruments that were
// off otherwise is made again.
func (p *Plan) findMeters(w *walk) {
	d := p.recipe.Drink
	w.meters = meter.NewRun(d, p.ens)
	several := meter.Several(d)
	if w.meters == nil || len(several) == 0 {
		return
	}
	before := *w
	before.survey, before.samples, before.volumes, before.making = &survey{several: several}, false, false, &made{}
	if _, _, err := before.serve(); err != nil {
		return // the walk with its readings says what is wrong
	}
	w.meters.Find(before.survey.seen)
	if found := w.meters.Found(); !slices.Equal(found, p.found) {
		p.found = found
		clear(p.kept)
	}
}

// loggedNotes says which readings come from the bench log, and how far the next lot may lie.
func loggedNotes(d *drink.Drink) (notes []note.Note) {
	for _, m := range d.Measurements() {
		for _, l := range m.Logged {
			notes = append(notes, note.Note{Kind: "reading logged", Text: fmt.Sprintf("%s, %s: %s", m.What(), l.Quantity, l.Told())})
		}
	}
	return notes
}
