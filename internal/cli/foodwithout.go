package cli

import (
	"slices"
	"strings"

	"sipsum/internal/allergen"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/store"
)

// without leaves foods out of a ranking that hold, or may hold, an allergen.
type without struct {
	leaves []string
	out    int // how many of the foods that come first it has left out
}

// withoutOf reads --without; no word leaves out none.
func withoutOf(words []string) (*without, error) {
	w := &without{}
	for _, word := range words {
		leaves := allergen.LeavesOf(word)
		if len(leaves) == 0 {
			return nil, fail.New(fail.Wrong, "unknown allergen \""+word+"\"", "use one of "+strings.Join(allergen.Words(), ", "))
		}
		w.leaves = append(w.leaves, leaves...)
	}
	return w, nil
}

// asked tells whether there is anything to leave out.
func (w *without) asked() bool { return len(w.leaves) > 0 }

// judge tells whether a food holds or may hold what is to be left out, and whether nobody
// has looked.
func (w *without) judge(f *food.Food) (holds, notAssessed bool) {
	known := allergen.Assess(allergen.Item{
		Food: f.ID, Name: f.Name(), Group: f.Group, PublisherGroup: f.PublisherGroup, Chemical: f.Chemical, Marks: f.Marks,
	})
	holds = slices.ContainsFunc(w.leaves, func(code string) bool {
		return slices.Contains(known.Leaves, code) || slices.Contains(known.Likely, code)
	})
	return holds, known.Knowledge == allergen.NotAssessed
}

// counts tells whether a food is among those that a ranking counts when it leaves them out.
func counts(q store.Ranking, x store.Ranked) bool {
	return len(q.First) == 0 || x.First || slices.Contains(q.First, x.Group)
}
