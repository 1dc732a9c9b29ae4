package contrast

import (
	"slices"
	"strings"

	"sipsum/internal/drink"
)

// Change is something that one file says and the other does not.
type Change struct {
	Where    string // "build", "cherry syrup", "own:house-oat", "the drink"
	What     string // a food, a step, a key; empty: all of Where
	From, To string // as written in each; empty: not there
	Line     bool   // an amount of a food, which is written before it
}

// entry is something that a file says.
type entry struct {
	where, what, text string
	line              bool
}

// changes lists what two files say otherwise: what stands in both, in whatever order, is left out; of
// what stands twice in one place the first goes with the first.
func changes(a, b *drink.Drink) []Change {
	was, is := entries(a), entries(b)
	was, is = without(was, is), without(is, was)
	var list []Change
	for _, e := range was {
		c := Change{Where: e.where, What: e.what, From: e.text, Line: e.line}
		i := slices.IndexFunc(is, func(x entry) bool { return x.where == e.where && x.what == e.what && x.line == e.line })
		if i >= 0 {
			c.To = is[i].text
			is = slices.Delete(is, i, i+1)
		}
		list = append(list, c)
	}
	for _, e := range is {
		list = append(list, Change{Where: e.where, What: e.what, To: e.text, Line: e.line})
	}
	return gathered(list, places(entries(a)), places(entries(b)))
}

// without takes the entries of another list out, each once.
func without(list, other []entry) []entry {
	left, out := slices.Clone(other), []entry{}
	for _, e := range list {
		if i := slices.Index(left, e); i >= 0 {
			left = slices.Delete(left, i, i+1)
			continue
		}
		out = append(out, e)
	}
	return out
}

func places(list []entry) map[string]bool {
	all := map[string]bool{}
	for _, e := range list {
		all[e.where] = true
	}
	return all
}

// gathered says in one change what is in a place that only one of the files has, and brings what
// is said of one place together.
func gathered(list []Change, inA, inB map[string]bool) []Change {
	var out []Change
	at := map[string]int{}
	for _, c := range list {
		if inA[c.Where] && inB[c.Where] {
			out = append(out, c)
			continue
		}
		i, have := at[c.Where]
		if !have {
			i = len(out)
			at[c.Where] = i
			out = append(out, Change{Where: c.Where})
		}
		out[i].From, out[i].To = joined(out[i].From, c, c.From), joined(out[i].To, c, c.To)
	}
	order := map[string]int{}
	for _, c := range out {
		if _, have := order[c.Where]; !have {
			order[c.Where] = len(order)
		}
	}
	slices.SortStableFunc(out, func(x, y Change) int { return order[x.Where] - order[y.Where] })
	return out
}

func joined(list string, c Change, text string) string {
	if text == "" && (c.Line || c.From+c.To != "") {
		return list
	}
	return strings.TrimPrefix(list+"; "+c.Said(text), "; ")
}

// Said puts what is written of something in the order of the file: an amount before its food, a key
// before its value.
func (c Change) Said(text string) string {
	if c.Line {
		return text + " " + c.What
	}
	return strings.TrimSuffix(c.What+": "+text, ": ")
}
