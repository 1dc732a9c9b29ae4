package evidence

import (
	"slices"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/ladder"
	"sipsum/internal/ledger"
	"sipsum/internal/source"
)

// servingOf is what an assay serves, with who may be said to bring something of it.
func servingOf(a *assay.Assay) ladder.Serving {
	s := ladder.Serving{Pot: a.Serving, Ml: a.Volume.Mean}
	for i := range a.Components {
		s.Parts = append(s.Parts, ladder.Part{Component: a.Components[i].ID.Component, Name: a.Components[i].Name, Rows: RowsOf(a, &a.Components[i])})
	}
	return s
}

// RowsOf gives the rows of a serving that came of a part; none if the build does not pour it.
func RowsOf(a *assay.Assay, c *assay.Component) []int {
	if a.Serving == nil {
		return nil
	}
	var rows []int
	for row, r := range a.Serving.Rows {
		if within := len(r.Path) > 0 && r.Path[0] == c.ID.Component; within || len(r.Path) == 0 && r.Profile.Food.ID == c.ID.Food {
			rows = append(rows, row)
		}
	}
	return rows
}

// sentences says of each constituent of a category the strongest that holds, the strongest first.
func sentences(s ladder.Serving, c Category, works citing) []ladder.Sentence {
	strongest := make([]ladder.Sentence, len(c.Entries))
	_ = estimate.InBlocks(len(c.Entries), func(from, to int) error {
		for i, e := range c.Entries[from:to] {
			if Speaks(e, s.Ml) {
				strongest[from+i], _ = s.Highest(e.Constituent)
			}
		}
		return nil
	})
	var list []ladder.Sentence
	for i, said := range strongest {
		if said.Rung == "" { // there is none
			continue
		}
		e := c.Entries[i]
		said.Works = works.behind(Spoken(e, said).Contributions)
		if len(said.Works) == 0 && said.Added { // a substance by its formula: what it is added beside has works
			said.Works = e.Works
		}
		if len(said.Works) > 0 {
			list = append(list, said)
		}
	}
	slices.SortStableFunc(list, func(x, y ladder.Sentence) int {
		return slices.Compare(place(x, list), place(y, list))
	})
	return list
}

// Spoken is as much of an entry as a sentence credits somebody with, and the works that it cites.
func Spoken(e Entry, said ladder.Sentence) Entry {
	e.Works = said.Works
	e.Contributions = slices.DeleteFunc(slices.Clone(e.Contributions), func(c composition.Contribution) bool {
		if said.Component != "" {
			return len(c.Path) == 0 || c.Path[0] != said.Component
		}
		return c.Food != said.Food.String()
	})
	return e
}

// place orders a sentence among those of its category: those in which somebody leads before those
// that say less, what is part of a total before what is of none (an acid before a salt), then by
// rung, no part of a total before a leading sentence about the total.
func place(s ladder.Sentence, list []ladder.Sentence) []int {
	lead := ladder.Lead.Height()
	p := []int{0, 0, s.Rung.Height()}
	if s.Rung.Height() > lead {
		p[0] = 1
	}
	if s.Constituent.Parent == "" {
		p[1] = 1
	}
	for _, whole := range list {
		if up := whole.Rung.Height(); up <= lead && partOfTotal(s.Constituent, whole.Constituent) {
			p[2] = max(p[2], up)
		}
	}
	return p
}

// partOfTotal reports whether a constituent is part of another.
func partOfTotal(c, whole *constituent.Constituent) bool {
	for up := c.Parent; up != ""; up = constituent.Must(up).Parent {
		if up == whole.ID {
			return true
		}
	}
	return false
}

// Speaks reports whether a figure may be spoken of: a work that was seen stands behind it and no
// weighty part of it is from memory, it is more than a trace, and there is enough of it.
func Speaks(e Entry, ml float64) bool {
	return len(e.Works) > 0 && !e.fromMemory && e.State < estimate.Trace && ladder.Worth(e.Constituent, e.Mean, ml)
}

// onlyFromMemory reports whether a part that counts has a source and none that was seen.
func onlyFromMemory(e Entry, works citing) bool {
	for _, c := range e.Contributions {
		if c.Mean < ledger.Weighty*e.Mean || c.Mean == 0 {
			continue
		}
		named := works.each(c)
		if len(named) > 0 && !slices.ContainsFunc(named, func(w source.Work) bool { return !source.IsFromMemory(w.Citation) }) {
			return true
		}
	}
	return false
}
