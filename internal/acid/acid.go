package acid

import (
	"fmt"
	"math"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
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

// metalCharge is the charge of each.
const metalCharge = 2

// metalNames are the metals' names in the data.
var metalNames = map[string]Metal{"calcium": Calcium, "magnesium": Magnesium}

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

// Given gives how many protons a molecule has given away at a pH, at 25 °C and no ionic strength.
func (a *Acid) Given(pH float64) float64 {
	h, weight, sum, given := math.Pow(10, -pH), 1.0, 1.0, 0.0
	for i, step := range a.Steps {
		weight *= math.Pow(10, -step.PK) / h
		sum += weight
		given += float64(i+1) * weight
	}
	return given / sum
}

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
	for _, row := range embedded.Rows("acid_acids.csv") {
		a := Acid{ID: row.Text("acid"), Name: row.Text("name"), Constituent: constituent.ID(row.Text("constituent")), Charge: row.Whole("charge")}
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
	for _, row := range embedded.Rows("acid_steps.csv") {
		a := t.named(row)
		if row.Whole("step") != len(a.Steps)+1 {
			row.Fail("the steps of %s are out of order", a.ID)
		}
		a.Steps = append(a.Steps, Step{
			PK: row.Number("pk"), SD: row.Number("sd"), Group: row.Text("group"),
			DH: joules * orZero(row, "dh_kj_mol"), DCp: orZero(row, "dcp_j_mol_k"), Source: row.Text("source"), TemperatureSource: row.Text("temperature_source"),
		})
	}
}

func (t *acidTable) readPairs() {
	for _, row := range embedded.Rows("acid_complexes.csv") {
		metal, ok := metalNames[row.Text("metal")]
		if !ok {
			row.Fail("unknown metal %s", row.Text("metal"))
		}
		a := t.named(row)
		a.Pairs = append(a.Pairs, Pair{
			Metal: metal, Hydrogens: row.Whole("hydrogens"), LogBeta: row.Number("log_beta"),
			DH: joules * orZero(row, "dh_kj_mol"), Source: row.Text("source"),
		})
	}
}

// named gives the acid of a row.
func (t *acidTable) named(row embedded.Row) *Acid {
	i, ok := t.byID[row.Text("acid")]
	if !ok {
		row.Fail("unknown acid %s", row.Text("acid"))
	}
	return &t.acids[i]
}

// orZero reads a coefficient that is blank where nobody has measured it: then the
// constant stays as it is at 25 °C.
func orZero(row embedded.Row, column string) float64 {
	x, _ := row.Optional(column)
	return x
}

// The pK scale of fitted spectra: a numerical grid that all spectra share, so
// that they blend by adding. Half a pH is finer than a monoprotic curve is wide.
const (
	siteFirst = 1.0
	siteLast  = 12.0
	SiteStep  = 0.5
)

func (t *acidTable) addSites() {
	t.site0 = Index(len(t.acids))
	for pk := siteFirst; pk <= siteLast; pk += SiteStep {
		id := fmt.Sprintf("site %.1f", pk)
		t.byID[id] = Index(len(t.acids))
		t.acids = append(t.acids, Acid{ID: id, Name: id, Steps: []Step{{PK: pk, Group: "site", Source: "a titration"}}})
	}
}
