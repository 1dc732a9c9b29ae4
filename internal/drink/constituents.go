package drink

import (
	"sipsum/internal/constituent"
	"sipsum/internal/fail"
)

// readConstituents reads what categories, split and ferment call constituents, in words or by
// tagname, and keeps the ids. Those of own foods stay as they are written: what the word of a pack
// means its rules decide.
func (w *whole) readConstituents() {
	for i := range w.drink.Categories {
		c := &w.drink.Categories[i]
		named := w.tags(constituent.OfDrinks)
		for j := range c.Tags {
			named.read(&c.Tags[j], c.Place)
		}
	}
	for _, steps := range w.drink.stepLists() {
		for _, s := range steps {
			switch s := s.(type) {
			case *Split:
				named := w.tags(constituent.Kept)
				for j := range s.Keep {
					named.read(&s.Keep[j].Tag, s.Keep[j].Place)
				}
			case *Ferment:
				named := w.tags(constituent.OfDrinks)
				for j := range s.Figures {
					named.read(&s.Figures[j].Tag, s.Figures[j].Place)
				}
			}
		}
	}
}

// stepLists gives the steps of every component, and those of the finish.
func (d *Drink) stepLists() (all [][]Step) {
	for _, c := range d.Components {
		all = append(all, c.Steps)
	}
	return append(all, d.Finish)
}

// tags reads the constituents of one list, each of which stands there once.
type tags struct {
	faults *fail.List
	wanted func(*constituent.Constituent) bool
	as     map[constituent.ID]string // how each is written
}

func (w *whole) tags(wanted func(*constituent.Constituent) bool) tags {
	return tags{w.file.faults, wanted, map[constituent.ID]string{}}
}

func (t tags) read(tag *string, at fail.Place) {
	c, err := constituent.Read(*tag, t.wanted)
	if err != nil {
		t.faults.Join(at, err)
		return
	}
	if before, twice := t.as[c.ID]; twice {
		t.faults.Add(at, "keep one of them", "%s is %s, which stands here already", quoted(*tag), quoted(before))
		return
	}
	t.as[c.ID] = *tag
	*tag = string(c.ID)
}
