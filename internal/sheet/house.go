package sheet

import (
	"context"
	"fmt"
	"strings"

	"sipsum/internal/claims"
	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/evidence"
	"sipsum/internal/houserules"
)

// JudgeHouse answers house rules. The assay was run as Judge wants it.
func JudgeHouse(ctx context.Context, s *Sheet, h *drink.HouseRules, works evidence.Works, shelf claims.Shelf) error {
	of := houserules.Case{
		Assay: s.Assay,
		Bench: claims.Bench{Assay: s.Assay, Declared: func(word string) (bool, error) { return declares(s.Allergens(), word) }, Works: claims.Works(works), Shelf: shelf},
	}
	for _, d := range s.Allergens() {
		of.Declarations = append(of.Declarations, d.Declaration)
	}
	var err error
	s.House, err = of.Judge(ctx, h)
	return err
}

// EvidenceToDecide reports whether the evidence shows what must be decided: a claim that nobody says as it
// stands, a house rule that the drink fails or of which nobody can tell, a reading that contradicts its recipe.
func EvidenceToDecide(s *Sheet) bool {
	return UndecidedClaims(s) || s.House.Decides() || Contradicted(s)
}

// BriefToDecide reports whether the brief does: it prints what must not be said, and counts the rules.
func BriefToDecide(s *Sheet) bool { return NotReady(s) }

// HouseInShort counts the lines of house rules by their answers, and names the first that fails; empty if
// there are none.
func HouseInShort(s *Sheet) string {
	if s.House == nil || len(s.House.Lines) == 0 {
		return ""
	}
	var parts []string
	if n := len(s.House.Of(houserules.Pass)); n > 0 {
		parts = append(parts, fmt.Sprintf("%d pass", n))
	}
	if failing := s.House.Of(houserules.Fails); len(failing) > 0 {
		count := "1 fails, the rule "
		if len(failing) > 1 {
			count = fmt.Sprintf("%d fail, the first the rule ", len(failing))
		}
		parts = append(parts, count+"“"+clean.LowerFirst(clean.Name(failing[0].Rule))+"”")
	}
	if n := len(s.House.Of(houserules.CannotTell)); n > 0 {
		parts = append(parts, fmt.Sprintf("%d cannot be told", n))
	}
	return strings.Join(parts, " · ")
}
