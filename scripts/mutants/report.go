package main

import (
	"fmt"
	"io"
	"maps"
	"slices"
)

// count is how many mutants there were, and how many of them died.
type count struct{ all, died int }

// tally counts by package.
type tally struct{ of map[string]count }

func (t *tally) add(p place, e end) {
	if t.of == nil {
		t.of = map[string]count{}
	}
	c := t.of[p.folder]
	c.all++
	if e.killer != "" {
		c.died++
	}
	t.of[p.folder] = c
}

func (t *tally) mutants() int {
	all := 0
	for _, c := range t.of {
		all += c.all
	}
	return all
}

func (t *tally) write(w io.Writer) error {
	died := 0
	for _, c := range t.of {
		died += c.died
	}
	if _, err := fmt.Fprintf(w, "\n%d of %d died in the tests of their own package\n", died, t.mutants()); err != nil {
		return err
	}
	for _, folder := range slices.Sorted(maps.Keys(t.of)) {
		if _, err := fmt.Fprintf(w, "  %-24s %2d of %2d\n", folder, t.of[folder].died, t.of[folder].all); err != nil {
			return err
		}
	}
	return nil
}
