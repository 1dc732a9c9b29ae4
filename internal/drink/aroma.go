package drink

import (
	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/fail"
)

// Aroma is what a guest smells and nothing weighs: of which material, what is done with it,
// and what the designer says of it. It brings nothing to any figure.
type Aroma struct {
	Place     fail.Place
	Of        string
	Treatment string // of Treatments
	Note      string // "" if there is none
}

// Treatments are what is done with a material for its smell.
var Treatments = []string{"expressed", "flamed", "infused"}

var aromaKeys = grammar[Aroma]{"an entry of aroma", []key[Aroma]{
	text("of", "the material: orange peel", true, mostName, func(a *Aroma) *string { return &a.Of }),
	word("treatment", "what is done with it", true, Treatments, func(a *Aroma) *string { return &a.Treatment }),
	text("note", "what you say of it", false, mostProse, func(a *Aroma) *string { return &a.Note }),
}}

// aromas reads what is only smelled.
func (r *reader) aromas(n ast.Node, what string) []Aroma {
	return readList(r, aromaKeys, n, what, func(at fail.Place) Aroma { return Aroma{Place: at} })
}
