package jsonreport

import (
	"io"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

type comparedFood struct {
	Food string `json:"food"`
	Name string `json:"name"`
}

type comparedCell struct {
	Mean      number `json:"mean"`
	SD        number `json:"sd"`
	SDAssumed bool   `json:"sd_is_class_default"`
	Limit     number `json:"limit"`
	State     string `json:"state"`
	By        string `json:"by,omitempty"` // borrowed or kin: nobody measured this food's own
}

type comparedLine struct {
	Constituent constituent.ID  `json:"constituent"`
	Unit        string          `json:"unit"`
	Cells       []*comparedCell `json:"cells"` // one for each food; null where the table says nothing
	Disagree    bool            `json:"disagree"`
	Copied      bool            `json:"copied,omitempty"` // one figure, copied: no difference is known
}

// Compare writes sipsum.compare-foods/1. missing names foods of tables that are
// not loaded.
func Compare(w io.Writer, foods []*food.Food, lines []food.Comparison, missing []string) error {
	document := struct {
		Schema  string         `json:"schema"`
		Foods   []comparedFood `json:"foods"`
		Lines   []comparedLine `json:"lines"`
		Missing []string       `json:"not_loaded"`
	}{Schema: "sipsum.compare-foods/1", Foods: []comparedFood{}, Lines: []comparedLine{}, Missing: append([]string{}, missing...)}
	for _, f := range foods {
		document.Foods = append(document.Foods, comparedFood{f.ID.String(), f.Name()})
	}
	for _, line := range lines {
		out := comparedLine{Constituent: line.Constituent.ID, Unit: line.Constituent.Unit, Disagree: line.Disagree, Copied: line.Copied}
		for _, c := range line.Cells {
			if !c.Stated {
				out.Cells = append(out.Cells, nil)
				continue
			}
			out.Cells = append(out.Cells, &comparedCell{number(c.Value.Amount), number(c.SD), c.Class, number(c.Value.Limit), c.Value.State.String(), c.By})
		}
		document.Lines = append(document.Lines, out)
	}
	return write(w, document)
}
