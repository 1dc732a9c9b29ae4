package jsonreport

import (
	"io"

	"sipsum/internal/allergen"
	"sipsum/internal/sheet"
)

// offer is a drink of a menu, on a line of its own.
type offer struct {
	Schema    string        `json:"schema"`
	Program   string        `json:"program"`
	Seed      uint64        `json:"seed"`
	Draws     int           `json:"draws"`
	File      string        `json:"file"`
	Drink     offered       `json:"drink"`
	Cards     []card        `json:"cards"`
	Allergens []declaration `json:"allergens"`
	Matrix    []matrix      `json:"matrix"`
	Against   []string      `json:"contradicted"`
}

type offered struct {
	Name      string  `json:"name"`
	Serves    int     `json:"serves"`
	ServingG  float64 `json:"serving_g"`
	ServingMl float64 `json:"serving_ml,omitempty"`
}

// matrix is how a drink stands to every class of a set of rules.
type matrix struct {
	Rules   string       `json:"rules"`
	Classes []classState `json:"classes"`
}

type classState struct {
	Code  string         `json:"code"`
	Name  string         `json:"name"`
	State allergen.State `json:"state"`

	Contains   []string `json:"contains,omitempty"` // what of the class: "hazelnuts"
	MayContain []string `json:"may_contain,omitempty"`
}

// Menu writes sipsum.menu/1: JSON Lines, a drink a line in the order of the menu.
func Menu(w io.Writer, m *sheet.Menu) error {
	matrices := m.Matrices()
	for i, d := range m.Drinks {
		document := offer{
			"sipsum.menu/1", m.Program, m.Seed, m.Draws, d.File, offered{d.Name, d.Serves, d.ServingG, d.ServingMl},
			cardsOf(d.Cards), declared(d.Allergens), each(matrices, func(x sheet.Matrix) matrix { return matrixOf(x, i) }), listed(d.Against),
		}
		if err := writeLine(w, document); err != nil {
			return err
		}
	}
	return nil
}

// matrixOf is the line of a drink in a matrix.
func matrixOf(x sheet.Matrix, drink int) matrix {
	out := matrix{Rules: x.Rules}
	for i, c := range x.Classes {
		w := x.Within[drink][i]
		out.Classes = append(out.Classes, classState{c.Code, c.Name, x.States[drink][i], w.Contains, w.MayContain})
	}
	return out
}
