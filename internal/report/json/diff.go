package jsonreport

import (
	"io"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/tables/difference"
)

type columnDocument struct {
	ID   constituent.ID `json:"id"`
	Name string         `json:"name"`
	Unit string         `json:"unit"`
}

type sideDocument struct {
	Mean  number `json:"mean"`
	Limit number `json:"limit"`
	State string `json:"state"`
}

type changedValue struct {
	Constituent constituent.ID `json:"constituent"`
	Old         *sideDocument  `json:"old"` // null where the edition has no value
	New         *sideDocument  `json:"new"`
}

type changeDocument struct {
	Change  string         `json:"change"` // added, removed or changed
	Code    string         `json:"code"`
	OldName string         `json:"old_name,omitempty"`
	NewName string         `json:"new_name,omitempty"`
	Values  []changedValue `json:"values"`
}

// Diff writes sipsum.diff/1.
func Diff(w io.Writer, old, new string, added, removed []food.Column, changes []difference.Change) error {
	document := struct {
		Schema  string           `json:"schema"`
		Old     string           `json:"old"`
		New     string           `json:"new"`
		Added   []columnDocument `json:"columns_added"`
		Removed []columnDocument `json:"columns_removed"`
		Foods   []changeDocument `json:"foods"`
	}{"sipsum.diff/1", old, new, columnsOf(added), columnsOf(removed), []changeDocument{}}
	words := map[difference.Kind]string{difference.Added: "added", difference.Removed: "removed", difference.Changed: "changed"}
	for _, c := range changes {
		out := changeDocument{Change: words[c.Kind], Code: c.Code, OldName: c.OldName, NewName: c.NewName, Values: []changedValue{}}
		for _, v := range c.Values {
			out.Values = append(out.Values, changedValue{v.Constituent, sideOf(v.Old), sideOf(v.New)})
		}
		document.Foods = append(document.Foods, out)
	}
	return write(w, document)
}

func columnsOf(list []food.Column) []columnDocument {
	out := []columnDocument{}
	for _, c := range list {
		out = append(out, columnDocument{c.ID, c.Name, c.Unit})
	}
	return out
}

func sideOf(v *food.Value) *sideDocument {
	if v == nil {
		return nil
	}
	return &sideDocument{number(v.Amount), number(v.Limit), v.State.String()}
}
