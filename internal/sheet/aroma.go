package sheet

import (
	"strings"
	"sync"

	"sipsum/internal/assay"
	"sipsum/internal/drink"
	"sipsum/internal/embedded"
	"sipsum/internal/phrase"
	"sipsum/internal/source"
)

// AromaMeans says what an aroma is to this sheet.
const AromaMeans = "Smelled, not calculated: no dose is given, for nobody has published how much leaves a material for the glass."

// NoVolatiles is said of a material of which our tables name none.
const NoVolatiles = "main volatiles: none in our tables"

// Smell is an aroma with the main volatiles that are published of such a material.
type Smell struct {
	drink.Aroma
	Volatiles   []string // none: our tables name none
	PublishedOf string
	Source      string
}

// volatiles is what is published of a material that is known by some words.
type volatiles struct {
	words phrase.List
	names []string
	of    string
	from  string
}

var published = sync.OnceValue(func() []volatiles {
	var list []volatiles
	for _, row := range embedded.Rows("aroma_volatiles.csv") {
		if from := row.Text("source"); !source.IsFromMemory(from) {
			list = append(list, volatiles{phrase.Read(row.Text("words")), strings.Split(row.Text("volatiles"), "|"), row.Text("material"), from})
		}
	}
	return list
})

// Smells lists what of a drink is only smelled, in the order of the file. Of materials that
// several rows know, as of a blood orange, the first is taken.
func Smells(d *drink.Drink) []Smell {
	var list []Smell
	for _, a := range d.Aroma {
		s, words := Smell{Aroma: a}, phrase.Words(a.Of)
		for _, v := range published() {
			if v.words.In(words) {
				s.Volatiles, s.PublishedOf, s.Source = v.names, v.of, v.from
				break
			}
		}
		list = append(list, s)
	}
	return list
}

// aromaWords are the aromas as cautions and allergens read them: what is done, and with what.
func aromaWords(a *assay.Assay) []string {
	var list []string
	for _, x := range a.Drink.Aroma {
		list = append(list, x.Treatment+" "+x.Of)
	}
	return list
}
