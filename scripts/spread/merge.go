package main

import (
	"cmp"
	"slices"

	"sipsum/internal/constituent"
)

// merge puts the rows in the order of the vocabulary, "*" first in each. Where
// both kinds of evidence exist the literature is taken.
func merge(table, published []row) []row {
	byKey := map[[2]string]row{}
	for _, r := range slices.Concat(table, published) {
		byKey[[2]string{r.constituent, r.group}] = r
	}
	rows := make([]row, 0, len(byKey))
	for _, r := range byKey {
		rows = append(rows, r)
	}
	slices.SortFunc(rows, func(a, b row) int {
		return cmp.Or(cmp.Compare(order(a.constituent), order(b.constituent)), cmp.Compare(a.group, b.group))
	})
	return rows
}

// order gives a constituent's place; "*" comes before all.
func order(id string) int {
	c, ok := constituent.Find(id)
	if !ok {
		return -1
	}
	return c.Order
}
