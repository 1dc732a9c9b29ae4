package assay

import (
	"slices"

	"sipsum/internal/acidity"
	"sipsum/internal/amount"
	"sipsum/internal/chemistry"
	"sipsum/internal/drink"
	"sipsum/internal/drivers"
	"sipsum/internal/ledger"
	"sipsum/internal/note"
	"sipsum/internal/prep"
	"sipsum/internal/reading"
	"sipsum/internal/titration"
)

// made is what was made of a list of lines and its steps: a component, or the drink. It is
// a value: with the same amounts the same is made, so that a run with others makes again
// only what holds them.
type made struct {
	name    string         // of the component; empty: the drink
	other   amount.Amounts // those in it that are not those written
	pot     *ledger.Pot
	read    reading.Taken // of the pot as it stands
	uses    []use         // of components in it
	yield   Yield
	log     []event
	samples []drivers.Sample // what could be read of it, if anybody asks
	volumes bool             // its yield tells them
	doubted bool             // what was read of its acidity and its recipe contradict one another
	sour    bool             // its log tells where a published pH disagrees
	bubbles bubbles

	solved map[chemistry.Liquid]*chemistry.Chemistry
}

// named gives what was made under a name; nil if nothing was.
func named(list []*made, name string) *made {
	for _, m := range list {
		if m.name == name {
			return m
		}
	}
	return nil
}

// use is one use of a component: the share of what was made of it.
type use struct {
	of    string
	share []float64
}

// event is what was said while something was made, in order: one of these.
type event struct {
	note     *note.Note
	reading  *reading.Reading
	titrated *titration.Told
	within   *drink.Component // was made, or had been
	dosed    *prep.Dosed
}

// chemistry works out what was made as a solution, once for what is asked of it.
func (m *made) chemistry(lab *acidity.Laboratory, l chemistry.Liquid) *chemistry.Chemistry {
	l.Pot, l.Read = m.pot, m.read.Acidity()
	l.Read.Doubted = m.doubted
	if m.solved == nil {
		m.solved = map[chemistry.Liquid]*chemistry.Chemistry{}
	}
	if m.solved[l] == nil {
		m.solved[l] = chemistry.Of(lab, l)
	}
	return m.solved[l]
}

// said gives the notes, readings, titrations and calculated doses of all that was made for the last
// of a list, in the order in which they came up; notes that say the same once.
func said(list []*made) (notes []note.Note, readings []reading.Reading, told Told) {
	seen := map[string]bool{}
	var of func(m *made)
	of = func(m *made) {
		for _, e := range m.log {
			switch {
			case e.within != nil && !seen[e.within.Name]:
				seen[e.within.Name] = true
				of(named(list, e.within.Name))
			case e.reading != nil:
				readings = append(readings, *e.reading)
			case e.titrated != nil:
				told.Titrated = append(told.Titrated, *e.titrated)
			case e.dosed != nil:
				told.Adjusted = append(told.Adjusted, *e.dosed)
			case e.note != nil && !slices.ContainsFunc(notes, e.note.Same):
				notes = append(notes, *e.note)
			}
		}
	}
	of(list[len(list)-1])
	return notes, readings, told
}
