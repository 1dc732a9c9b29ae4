package caution

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/allergen"
)

// look is a drink that was looked through: what is found of a term is found once.
type look struct {
	Input
	assessed []allergen.Assessment // by item
	says     []map[string]bool     // by item, the word lists of which one of its names has words
	parts    [][]string            // by item, whereto it belongs: the drink and the components on its way
	found    map[term]*match
	texts    map[string]map[string]bool // the word lists of other texts
}

func newLook(in Input) *look {
	l := &look{Input: in, found: map[term]*match{}, texts: map[string]map[string]bool{}}
	for _, it := range in.Items {
		l.assessed = append(l.assessed, allergen.Assess(it))
		says := map[string]bool{}
		for _, name := range append([]string{it.Name}, it.Names...) {
			for list, has := range lists().in(name) {
				says[list] = says[list] || has
			}
		}
		l.says = append(l.says, says)
		l.parts = append(l.parts, append([]string{""}, it.Path...))
	}
	return l
}

// any gives what is found of alternatives; nil if none is there.
func (l *look) any(of []together) *match {
	var m *match
	for _, terms := range of {
		if found := l.together(terms); found != nil {
			m = either(found, m)
		}
	}
	return m
}

func (l *look) together(terms together) *match {
	m := &match{all: true}
	for _, t := range terms {
		found := l.of(term{t.kind, t.key, false})
		switch {
		case t.not:
			m = m.without(found)
		case !found.found():
			return nil
		default:
			m = both(m, found)
		}
		if m == nil {
			return nil
		}
	}
	return m
}

// of finds one term, once.
func (l *look) of(t term) *match {
	m, done := l.found[t]
	if !done {
		m = l.find(t)
		l.found[t] = m
	}
	return m
}

func (l *look) find(t term) *match {
	m := &match{unsure: t.kind == "allergen"}
	for i := range l.Items {
		if l.is(i, t) {
			m.items = append(m.items, i)
			m.add("in it: "+named(l.Items[i]), l.parts[i]...)
			m.unsure = m.unsure && !slices.Contains(l.assessed[i].Leaves, t.key)
		}
	}
	switch t.kind {
	case "food":
		l.named(t, m)
	case "step", "technique", "vessel":
		l.done(t, m)
	case "alcohol":
		return l.alcohol(t.key)
	case "served":
		if limit, err := strconv.ParseFloat(t.key, 64); err == nil {
			l.served(limit, m)
		}
	}
	return m
}

// is reports whether a food is what a term means.
func (l *look) is(i int, t term) bool {
	it := l.Items[i]
	switch t.kind {
	case "mark":
		return slices.Contains(l.assessed[i].Cautions, t.key) && (t.key != caffeineMark || l.wakes(i))
	case "allergen":
		return slices.Contains(l.assessed[i].Leaves, t.key) || slices.Contains(l.assessed[i].Likely, t.key)
	case "group":
		return it.Group == t.key
	case "own":
		return it.Own && it.Group == t.key
	case "food", "ownfood":
		return l.says[i][t.key] && (t.kind == "food" || it.Own)
	}
	return false
}

// holds reports whether a text of the drink file has words of a list.
func (l *look) holds(text, list string) bool {
	if l.texts[text] == nil {
		l.texts[text] = lists().in(text)
	}
	return l.texts[text][list]
}

// named finds a list in the names of components and in the words of what was done: "rinsed
// with wormwood". A drink may be called anything.
func (l *look) named(t term, m *match) {
	for _, p := range l.Parts {
		for _, how := range p.Techniques {
			if l.holds(how, t.key) {
				m.add("technique: "+how, "", p.Name)
			}
		}
		if l.holds(p.Name, t.key) {
			m.add("its name: "+p.Name, "", p.Name)
		}
	}
}

// done finds what was done in a part, and in what.
func (l *look) done(t term, m *match) {
	for _, p := range l.Parts {
		switch t.kind {
		case "step":
			if slices.Contains(p.Steps, t.key) {
				m.add("step: "+t.key, p.Name)
			}
		case "technique":
			for _, how := range append(slices.Clone(p.Techniques), p.Name) {
				if l.holds(how, t.key) {
					m.add("technique: "+how, p.Name)
				}
			}
		case "vessel":
			if l.holds(p.Vessel, t.key) {
				m.add("vessel: "+p.Vessel, p.Name)
			}
		}
	}
}

// served finds a drink that is served hot: as it says, or, if it does not, because it is
// heated last.
func (l *look) served(limit float64, m *match) {
	heated := slices.ContainsFunc(l.Parts, func(p Part) bool { return p.Name == "" && slices.Contains(p.Steps, "heat") })
	switch {
	case l.ServedAt >= limit:
		m.add("served at "+strconv.FormatFloat(l.ServedAt, 'g', -1, 64)+" °C", "")
	case l.ServedAt == 0 && heated:
		m.add("heated last, and no serving temperature", "")
	}
}

// alcohol finds alcohol by its strength, not by the name of what is in it.
func (l *look) alcohol(key string) *match {
	strong, m := l.strength(), &match{all: true, because: []string{"alcohol: " + l.strength().text(true)}}
	limit := printed
	if rest, found := strings.CutPrefix(key, "over "); found {
		limit, _ = strconv.ParseFloat(rest, 64)
	} else if rest, found := strings.CutPrefix(key, "up to "); found {
		limit, _ = strconv.ParseFloat(rest, 64)
		if strong.abv > limit {
			return nil
		}
		return m
	}
	switch {
	case key == "any" && strong.abv >= limit, key != "any" && strong.abv > limit:
	case len(strong.unstated) > 0, math.IsNaN(strong.abv) && l.Amounts[alcoholID].Mean > 0:
		m.unsure = key != "any" // how strong nobody has stated
		m.because = []string{"alcohol: " + strong.text(true)}
	case strong.most > limit && strong.plausible:
		m.unsure = true
		m.because = []string{"alcohol: " + strong.text(false)}
	default:
		return nil
	}
	return m
}

func named(it allergen.Item) string {
	if it.Name == "" {
		return it.Food.String()
	}
	return it.Name
}
