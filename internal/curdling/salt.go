package curdling

import (
	"sync"

	"sipsum/internal/acid"
	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// Salt is a food-grade salt that buffers.
type Salt struct {
	ID       string
	Name     string
	Additive string  // its number in European law
	most     float64 // g per kg of drink
	perGram  *acid.Solution
}

// Salts lists data/curdling_salts.csv.
func Salts() []*Salt { return salts() }

var salts = sync.OnceValue(func() []*Salt {
	var list []*Salt
	for _, row := range embedded.Rows("curdling_salts.csv") {
		molar, err := constituent.MolarMass(row.Text("formula"))
		if err != nil {
			row.Fail("%v", err)
		}
		i, ok := acid.Find(row.Text("acid"))
		if !ok {
			row.Fail("no acid %s", row.Text("acid"))
		}
		s := &Salt{ID: row.Text("salt"), Name: row.Text("name"), Additive: row.Text("additive"), most: row.Number("most"), perGram: acid.New(0)}
		s.perGram.Acids[i] = row.Number("acids") / molar
		s.perGram.AddIon(1, row.Number("cation_charges")/molar)
		list = append(list, s)
	}
	return list
})
