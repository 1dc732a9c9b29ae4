package jsonreport

import (
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/sheet"
)

// brought is what an ingredient brings of a constituent: its share of what is known, and where
// it does not know all of it, the most that it could bring besides.
type broughtForm struct {
	Amount  number  `json:"amount"`
	Share   number  `json:"share"`
	Low     number  `json:"low"`
	High    number  `json:"high"`
	Worst   number  `json:"worst"` // the share in its worst draw with all that others do not know at its most; null: nothing bounds that
	Unknown bool    `json:"unknown,omitempty"`
	UpTo    *number `json:"unknown_up_to,omitempty"` // null: nothing bounds it
}

// ingredientShare is a food and what it brings, through each pot and in all.
type ingredientShare struct {
	Constituent constituent.ID `json:"constituent,omitempty"`
	Food        string         `json:"food"`
	Name        string         `json:"name"`
	Through     []throughForm  `json:"through"`
	broughtForm
}

type throughForm struct {
	Path []string `json:"path"` // empty: poured directly
	broughtForm
}

func broughtOf(b composition.Bringing) broughtForm {
	out := broughtForm{number(b.Mean), number(b.Share.Mean), number(b.Share.Low), number(b.Share.High), number(b.Worst), b.Unknown, nil}
	if b.Unknown {
		most := number(b.Most)
		out.UpTo = &most
	}
	return out
}

// ingredientShares writes the ingredients of a constituent; of is empty where the place says of which.
func ingredientShares(of constituent.ID, list []sheet.Ingredient) []ingredientShare {
	return each(list, func(i sheet.Ingredient) ingredientShare {
		through := each(i.Through, func(t composition.Through) throughForm {
			return throughForm{append([]string{}, t.Path...), broughtOf(t.Bringing)}
		})
		return ingredientShare{of, i.Food.ID.String(), i.Name, through, broughtOf(i.Bringing)}
	})
}

// sharesOf writes the ingredients of every constituent of a serving, worked out side by side.
func sharesOf(s *sheet.Sheet) map[constituent.ID][]ingredientShare {
	figures := s.Assay.PerServing
	lists := make([][]ingredientShare, len(figures))
	_ = estimate.InBlocks(len(figures), func(from, to int) error {
		for i := from; i < to; i++ {
			lists[i] = ingredientShares("", sheet.Ingredients(s, figures[i].Constituent))
		}
		return nil
	})
	all := make(map[constituent.ID][]ingredientShare, len(figures))
	for i, f := range figures {
		all[f.Constituent.ID] = lists[i]
	}
	return all
}
