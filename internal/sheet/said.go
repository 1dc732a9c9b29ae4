package sheet

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/claims"
	"sipsum/internal/evidence"
)

// Judge judges the claims of the drink. Its assay was run with draws, chemistry, the readings not
// yet taken and a journal of its inputs.
func (s *Sheet) Judge(ctx context.Context, works evidence.Works, again claims.Again) error {
	bench := claims.Bench{Assay: s.Assay, Declared: s.declares, Works: claims.Works(works), Again: again}
	said, err := bench.Judge(ctx)
	s.Said = said
	return err
}

// declares reports whether an allergen, or one of a class, is declared under any of the rules.
func (s *Sheet) declares(word string) (bool, error) {
	leaves := allergen.LeavesOf(word)
	if len(leaves) == 0 {
		return false, fmt.Errorf("there is no allergen %q: use one of %s", word, strings.Join(allergen.Words(), ", "))
	}
	for _, d := range s.Allergens() {
		for _, list := range [][]allergen.Entry{d.Contains, d.NotDeclared, d.Excepted} {
			if slices.ContainsFunc(list, func(e allergen.Entry) bool {
				return slices.ContainsFunc(e.Leaves, func(leaf string) bool { return slices.Contains(leaves, leaf) })
			}) {
				return true, nil
			}
		}
	}
	return false, nil
}

// Undecided claims are those that fail or that something unknown decides: nobody says them as
// they stand.
func (s *Sheet) UndecidedClaims() bool {
	return slices.ContainsFunc(s.Said, func(c claims.Said) bool { return c.Decides() })
}

// NotReady reports whether a drink waits for a decision: of its allergens, or of its claims.
func (s *Sheet) NotReady() bool { return s.NotAssessed() || s.UndecidedClaims() }
