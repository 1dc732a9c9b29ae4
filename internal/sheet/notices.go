package sheet

import (
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/reading"
)

// The kinds of notes that have a place of their own.
const (
	noteUnknown   = "unknown"           // which foods leave a constituent unknown
	noteDisagrees = "reading disagrees" // which reading and recipe disagree

	noteMeter = "meter out of tolerance" // which instrument is not to be believed before somebody has seen to it
)

// Read is what was read, what must be seen first apart: readings that do not agree with the
// recipe, and those of them that are no figures, such as titrations.
type Read struct {
	Disagree []reading.Reading
	Notes    []string
	Agree    []reading.Reading
}

// None reports whether nothing was read.
func (r Read) None() bool { return len(r.Disagree)+len(r.Notes)+len(r.Agree) == 0 }

// Read gives the readings of a drink.
func (s *Sheet) Read() Read {
	var out Read
	for _, r := range s.Assay.Readings {
		if r.Agrees {
			out.Agree = append(out.Agree, r)
		} else {
			out.Disagree = append(out.Disagree, r)
		}
	}
	for _, n := range s.Assay.Notes {
		told := func(r reading.Reading) bool { return r.Note() == n.Text }
		if n.Kind == noteMeter || n.Kind == noteDisagrees && !slices.ContainsFunc(s.Assay.Readings, told) {
			out.Notes = append(out.Notes, n.Text)
		}
	}
	return out
}

// Gap is a food and what it leaves unknown.
type Gap struct {
	Food    string
	Missing []*constituent.Constituent
}

// Gaps says, food by food, what is not known of it.
func (s *Sheet) Gaps() []Gap {
	var list []Gap
	at := map[string]int{}
	for _, n := range s.Assay.Notes {
		c, ok := constituent.Find(string(n.Constituent))
		if n.Kind != noteUnknown || !ok {
			continue
		}
		for _, f := range n.Foods {
			if _, have := at[f]; !have {
				at[f] = len(list)
				list = append(list, Gap{Food: f})
			}
			g := &list[at[f]]
			g.Missing = append(g.Missing, c)
		}
	}
	return list
}

// ofTables are the kinds of notes about how published figures were made to fit together: no
// decision hangs on one, and a page that does not tell all counts them.
var ofTables = []string{"over total", "over mass", "derived"}

// Notes gives what else should be known; whole: how published figures were made to fit together
// too, else how many notes say so.
func (s *Sheet) Notes(whole bool) (list []string, more int) {
	for _, n := range s.Assay.Notes {
		switch {
		case n.Kind == noteUnknown || n.Kind == noteDisagrees || n.Kind == noteMeter:
		case !whole && slices.Contains(ofTables, n.Kind):
			more++
		default:
			list = append(list, n.Text)
		}
	}
	return list, more
}

// TableEnergy is the energy that the tables themselves state, beside that by the rules in
// force, and the foods of which none is stated.
func (s *Sheet) TableEnergy() (stated []composition.TableEnergy, missing []string) {
	for _, e := range s.Assay.TableEnergy {
		if e.Amount <= 0 {
			continue
		}
		stated = append(stated, e)
		for _, food := range e.Missing {
			if !slices.Contains(missing, food) {
				missing = append(missing, food)
			}
		}
	}
	return stated, missing
}

// Inside gives the components that the drink is set against where no line of the build pours them.
func (s *Sheet) Inside() []*assay.Component {
	var list []*assay.Component
	for _, alone := range append([]*assay.Component{s.Assay.Alone}, s.Assay.Also...) {
		if alone != nil && !slices.ContainsFunc(s.Assay.Components, func(c assay.Component) bool { return c.ID == alone.ID }) {
			list = append(list, alone)
		}
	}
	return list
}
