package acid

import (
	"fmt"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/source"
)

// Index is the place of an acid in every Solution.
type Index int

// Acid is a weak acid: a row of data/acid_acids.csv with its steps, or a site of
// a fitted spectrum.
type Acid struct {
	ID          string
	Name        string
	Constituent constituent.ID // empty if the vocabulary has none
	Molar       float64        // g/mol of the constituent as tables print it; 0 without one
	Charge      int            // of its most protonated form
	Steps       []Step
	Pairs       []Pair
}

// Step is the loss of one proton.
type Step struct {
	PK     float64 // at 25 °C and I = 0
	SD     float64
	Group  string  // carboxyl, phenol, enol, inorganic, ammonium
	DH     float64 // J/mol
	DCp    float64 // J/(mol K)
	Source string
	// TemperatureSource tells where DH and DCp come from; empty means that the
	// constant is taken as the same at every temperature.
	TemperatureSource string
}

// Metal is a metal that pairs with acids.
type Metal uint8

// The metals.
const (
	Calcium Metal = iota
	Magnesium
	metals
)

// Pair is M + h·H⁺ + L, with L the acid without any of its protons.
type Pair struct {
	Metal     Metal
	Hydrogens int
	LogBeta   float64 // at 25 °C and I = 0
	DH        float64 // J/mol
	Source    string
}

// FromMemory tells whether the acid's pK were not seen in print. A figure that
// rests on such a constant carries a mark and is no evidence.
func (a *Acid) FromMemory() bool {
	for _, s := range a.Steps {
		if source.IsFromMemory(s.Source) {
			return true
		}
	}
	return false
}

// Equivalent gives grams per mol of protons when all are titrated, the weight
// that titratable acidity is written with.
func (a *Acid) Equivalent() float64 { return a.Molar / float64(len(a.Steps)) }

// All gives the acids in the order of Index: those of the data, then the sites.
func All() []Acid { return table().acids }

// Find gives an acid's index by its id.
func Find(id string) (Index, bool) {
	i, ok := table().byID[id]
	return i, ok
}

// Must is Find for acids that the code itself names.
func Must(id string) Index {
	i, ok := Find(id)
	if !ok {
		panic("acid: no acid " + id)
	}
	return i
}

type acidTable struct {
	acids []Acid
	byID  map[string]Index
	site0 Index // the first site
}

var table = sync.OnceValue(readAcids)

func readAcids() acidTable {
	t := acidTable{byID: map[string]Index{}}
	for _, row := range rows("acid_acids.csv") {
		a := Acid{ID: row[0], Name: row[1], Constituent: constituent.ID(row[2]), Charge: int(number("acid_acids.csv", row[3]))}
		if a.Constituent != "" {
			a.Molar = constituent.Must(a.Constituent).Molar
		}
		t.byID[a.ID] = Index(len(t.acids))
		t.acids = append(t.acids, a)
	}
	t.readSteps()
	t.readPairs()
	t.addSites()
	return t
}

const joules = 1000 // in a kilojoule

func (t *acidTable) readSteps() {
	const file = "acid_steps.csv"
	for _, row := range rows(file) {
		a := t.named(file, row[0])
		if step := int(number(file, row[1])); step != len(a.Steps)+1 {
			panic(fmt.Sprintf("acid: %s: %s: step %d out of order", file, row[0], step))
		}
		a.Steps = append(a.Steps, Step{
			PK: number(file, row[2]), SD: number(file, row[3]), Group: row[4],
			DH: joules * number(file, row[5]), DCp: number(file, row[6]), Source: row[7], TemperatureSource: row[8],
		})
	}
}

func (t *acidTable) readPairs() {
	const file = "acid_complexes.csv"
	names := map[string]Metal{"calcium": Calcium, "magnesium": Magnesium}
	for _, row := range rows(file) {
		metal, ok := names[row[0]]
		if !ok {
			panic("acid: " + file + ": unknown metal " + row[0])
		}
		a := t.named(file, row[1])
		a.Pairs = append(a.Pairs, Pair{
			Metal: metal, Hydrogens: int(number(file, row[2])), LogBeta: number(file, row[3]),
			DH: joules * number(file, row[4]), Source: row[5],
		})
	}
}

func (t *acidTable) named(file, id string) *Acid {
	i, ok := t.byID[id]
	if !ok {
		panic("acid: " + file + ": unknown acid " + id)
	}
	return &t.acids[i]
}

// The pK scale of fitted spectra: a numerical grid that all spectra share, so
// that they blend by adding. Half a pH is finer than a monoprotic curve is wide.
const (
	siteFirst = 1.0
	siteLast  = 12.0
	siteStep  = 0.5
)

func (t *acidTable) addSites() {
	t.site0 = Index(len(t.acids))
	for pk := siteFirst; pk <= siteLast; pk += siteStep {
		id := fmt.Sprintf("site %.1f", pk)
		t.byID[id] = Index(len(t.acids))
		t.acids = append(t.acids, Acid{ID: id, Name: id, Steps: []Step{{PK: pk, Group: "site", Source: "a titration"}}})
	}
}
