package caution

import (
	"slices"
	"strings"

	"sipsum/internal/embedded"
)

// term is one thing that must be in a drink, or must not.
type term struct {
	kind, key string
	not       bool
}

// together is terms that must meet in one part of a drink.
type together []term

// kinds are the things that a term may ask for.
var kinds = []string{"mark", "allergen", "group", "own", "food", "ownfood", "step", "technique", "vessel", "alcohol", "served"}

// alternatives reads "mark:alcohol + mark:caffeine|step:ferment".
func alternatives(f embedded.Row, column string) []together {
	var all []together
	for _, text := range parted(f.Text(column)) {
		var terms together
		for part := range strings.SplitSeq(text, " + ") {
			bare, not := strings.CutPrefix(part, "not ")
			kind, key, found := strings.Cut(bare, ":")
			if !found || !slices.Contains(kinds, kind) {
				f.Fail("%s: %q is no term", column, part)
			}
			if slices.Contains([]string{"food", "ownfood", "technique", "vessel"}, kind) && lists().lists[key] == nil {
				f.Fail("%s: no list %q", column, key)
			}
			terms = append(terms, term{kind, key, not})
		}
		all = append(all, terms)
	}
	return all
}

// match is what was found of a term, or of terms that met.
type match struct {
	items   []int // of the input
	parts   []string
	because []string
	unsure  bool // it is only possible
	all     bool // it is of no part
}

func (m *match) found() bool { return m != nil && (len(m.parts) > 0 || m.all) }

func (m *match) add(because string, parts ...string) {
	if !slices.Contains(m.because, because) {
		m.because = append(m.because, because)
	}
	for _, p := range parts {
		if !slices.Contains(m.parts, p) {
			m.parts = append(m.parts, p)
		}
	}
}

// both gives what two matches come to where they meet; nil if they do not.
func both(a, b *match) *match {
	m := &match{items: slices.Concat(a.items, b.items), because: slices.Concat(a.because, b.because), unsure: a.unsure || b.unsure}
	switch {
	case a.all:
		m.parts, m.all = b.parts, b.all
	case b.all:
		m.parts = a.parts
	default:
		m.parts = slices.DeleteFunc(slices.Clone(a.parts), func(p string) bool { return !slices.Contains(b.parts, p) })
	}
	if !m.found() {
		return nil
	}
	return m
}

// without takes the parts of another match away.
func (m *match) without(other *match) *match {
	if !other.found() {
		return m
	}
	left := *m
	left.parts = slices.DeleteFunc(slices.Clone(m.parts), func(p string) bool { return slices.Contains(other.parts, p) })
	if len(left.parts) == 0 || other.all {
		return nil
	}
	return &left
}

// either joins what was found of alternatives, b perhaps nothing; what is sure of one is sure.
func either(a, b *match) *match {
	switch {
	case b == nil, a.unsure != b.unsure && b.unsure:
		return a
	case a.unsure != b.unsure:
		return b
	}
	m := &match{items: slices.Concat(a.items, b.items), unsure: a.unsure, all: a.all || b.all}
	for _, one := range []*match{a, b} {
		for _, because := range one.because {
			m.add(because, one.parts...)
		}
	}
	return m
}
