package jsonreport

import "sipsum/internal/label"

// working is how one figure of a card came about.
type working struct {
	Row      string    `json:"row"`
	Label    string    `json:"label"`
	Basis    string    `json:"basis"`
	Unit     string    `json:"unit"`
	Formula  string    `json:"formula"`
	Terms    []term    `json:"terms"` // per serving
	Scale    float64   `json:"scale"` // of one serving to the basis
	Value    *float64  `json:"value"`
	Most     *float64  `json:"most,omitempty"`
	Printed  string    `json:"printed"`
	Percent  string    `json:"percent,omitempty"`
	Against  string    `json:"against,omitempty"`
	Accepted *accepted `json:"accepted,omitempty"`
	Status   string    `json:"status"`
	Sources  []string  `json:"sources"`
}

// accepted is what an authority accepts around a declared figure, as the rules print it.
type accepted struct {
	Low    string `json:"low"`
	High   string `json:"high"`
	Source string `json:"source"`
	Status string `json:"status"`
}

type term struct {
	Tag    string   `json:"tag"`
	Name   string   `json:"name"`
	Amount *float64 `json:"amount"` // null: unknown
	Most   *float64 `json:"most,omitempty"`
	Unit   string   `json:"unit"`
	Factor float64  `json:"factor"`
	Gives  *float64 `json:"gives"` // null: unknown
	Source string   `json:"source,omitempty"`
}

func workingsOf(cards [][]label.Working) [][]working {
	return each(cards, func(list []label.Working) []working { return each(list, workingOf) })
}

func workingOf(w label.Working) working {
	return working{
		w.Row, w.Label, w.Basis, w.Unit, w.Formula, each(w.Terms, func(t label.Term) term { return term(t) }),
		w.Scale, w.Value, w.Most, w.Printed, w.Percent, w.Against, (*accepted)(w.Accepted), w.Status, w.Sources,
	}
}
