package houserules

import (
	"maps"
	"slices"
	"strings"
	"sync"

	"sipsum/internal/allergen"
	"sipsum/internal/claim"
	"sipsum/internal/claims"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/spelling"
	"sipsum/internal/unit"
)

// Verdict is the answer to one line.
type Verdict string

// The verdicts.
const (
	Pass       Verdict = "pass"
	Fails      Verdict = "fails"
	CannotTell Verdict = "cannot tell"
)

// Line is one line of the rules with its answer.
type Line struct {
	Key     string // of the file: ingredients, kinds, constituents, allergens, limits, servings, …
	Rule    string // in words
	Verdict Verdict
	Why     string
	Settle  []string // what would settle it, or how it was meant
}

// Answer is that to all of the rules.
type Answer struct {
	Rules   *drink.HouseRules
	Lines   []Line
	Remarks []string // what holds for all
}

// Of gives the lines with a verdict.
func (a *Answer) Of(v Verdict) []Line {
	return slices.DeleteFunc(slices.Clone(a.Lines), func(l Line) bool { return l.Verdict != v })
}

// Decides reports whether a line fails or cannot be told; without rules nothing does.
func (a *Answer) Decides() bool {
	return a != nil && slices.ContainsFunc(a.Lines, func(l Line) bool { return l.Verdict != Pass })
}

// Check adds to the faults of reading what nobody could judge: codes, kinds and allergens that there
// are not, expressions that say nothing, more lines than are judged.
func Check(h *drink.HouseRules, faults *fail.List) {
	for _, w := range h.Forbidden.Ingredients {
		checkCode(w, faults)
	}
	for _, w := range h.Forbidden.Kinds {
		if len(claims.GroupsCalled(w.Text)) == 0 {
			faults.Add(w.Place, suggest(w.Text, kinds(), "use words of a food group: "), "there is no kind of food %q", w.Text)
		}
	}
	for _, w := range h.Forbidden.Allergens {
		if len(allergen.LeavesOf(w.Text)) == 0 {
			faults.Add(w.Place, suggest(w.Text, allergen.Words(), "use one of: "), "there is no allergen %q", w.Text)
		}
	}
	for _, l := range h.Limits {
		_, err := claim.Parse(l.Check, l.CheckAt)
		faults.Join(l.Place, err)
	}
	if most := int(unit.LimitOf("claims of a drink", "").High); len(h.Limits) > most {
		faults.Add(h.Limits[most].Place, "put some together", "there are %d limits, at most %d are judged", len(h.Limits), most)
	}
	f := h.Forbidden
	if most := int(unit.LimitOf("what house rules forbid", "").High); len(f.Ingredients)+len(f.Kinds)+len(f.Constituents)+len(f.Allergens) > most {
		faults.Add(fail.Place{File: h.File, Line: 1, Col: 1}, "forbid kinds where you can", "more than %d things are forbidden", most)
	}
}

// checkCode reports a code that no core food has, and one that is a drink's own.
func checkCode(w drink.Word, faults *fail.List) {
	switch id, coded := food.ParseID(w.Text); {
	case !coded:
	case id.Table == food.Own:
		faults.Add(w.Place, "forbid it by its name", "%s is a food of one drink file", w.Text)
	case id.Table == coreTable && coreNames()[id.Code] == "":
		faults.Add(w.Place, suggest(id.Code, slices.Sorted(maps.Keys(coreNames())), ""), "there is no food %s", w.Text)
	}
}

// coreTable is the table that is part of the program.
const coreTable = "core"

// coreNames gives the names of core foods by their codes.
var coreNames = sync.OnceValue(func() map[string]string {
	names := map[string]string{}
	for _, row := range embedded.Rows("core/foods.csv") {
		names[row.Text("code")] = row.Text("name")
	}
	return names
})

func kinds() []string {
	var list []string
	for _, g := range food.Groups() {
		list = append(list, g.Name)
	}
	return list
}

// suggest says what may have been meant, else what there is; without words for that, how to look for it.
func suggest(text string, names []string, all string) string {
	const few = 3
	near := spelling.Nearest(text, names)
	switch {
	case len(near) > 0:
		return "perhaps " + fail.Or(near[:min(len(near), few)])
	case all == "":
		return "look for it: sipsum food find"
	}
	return all + strings.Join(names, ", ")
}
