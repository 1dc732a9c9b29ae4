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
func Judge(ctx context.Context, s *Sheet, works evidence.Works, again claims.Again) error {
	bench := claims.Bench{Assay: s.Assay, Declared: DeclaredBy(s), Works: claims.Works(works), Again: again}
	said, err := bench.Judge(ctx)
	s.Said = said
	return err
}

// DeclaredBy tells of an allergen, or one of a class, whether a sheet declares it under any set of rules.
func DeclaredBy(s *Sheet) claims.Declared {
	return func(word string) (bool, error) { return declares(s.Allergens(), word) }
}

// declares reports whether an allergen, or one of a class, is declared under any set of rules.
func declares(under []Declaration, word string) (bool, error) {
	leaves := allergen.LeavesOf(word)
	if len(leaves) == 0 {
		return false, fmt.Errorf("there is no allergen %q: use one of %s", word, strings.Join(allergen.Words(), ", "))
	}
	for _, d := range under {
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

// UndecidedClaims reports whether a claim fails or something unknown decides it: nobody says it as
// it stands.
func UndecidedClaims(s *Sheet) bool {
	return slices.ContainsFunc(s.Said, func(c claims.Said) bool { return c.Decides() })
}

// NotReady reports whether a drink waits for a decision: of its allergens, of what was read, or
// of its claims.
func NotReady(s *Sheet) bool { return ToDecide(s) || UndecidedClaims(s) }
