package constituent

import (
	"strings"
	"sync"

	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// ID names a constituent: an INFOODS tagname, or an id of our own.
type ID string

// The constituents that code speaks of by name. All others are data.
const (
	Mass          ID = "MASS"
	Water         ID = "WATER"
	Protein       ID = "PROCNT"
	Fat           ID = "FAT"
	Saturates     ID = "FASAT"
	Carbohydrate  ID = "CHOCDF"
	Available     ID = "CHOAVL"
	Sugar         ID = "SUGAR"
	AddedSugar    ID = "SUGAD"
	Sucrose       ID = "SUCS"
	Glucose       ID = "GLUS"
	Fructose      ID = "FRUS"
	Galactose     ID = "GALS"
	Lactose       ID = "LACS"
	Fibre         ID = "FIBTG"
	Polyols       ID = "POLYL"
	OrganicAcids  ID = "OA"
	Alcohol       ID = "ALC"
	Ash           ID = "ASH"
	CarbonDioxide ID = "CO2"
	MassOther     ID = "MASS-other"
	Caffeine      ID = "CAFFN"
	Sodium        ID = "NA"
	Salt          ID = "NACL"
	Energy        ID = "ENERC"
	EnergyKcal    ID = "ENERC_KCAL"
)

// Kind is a constituent's part in the sums.
type Kind string

// The kinds.
const (
	Leaf   Kind = "leaf"
	Rest   Kind = "rest"
	Parent Kind = "parent"
	Rider  Kind = "rider"
	Figure Kind = "figure"
)

// Constituent is one row of the vocabulary.
type Constituent struct {
	ID      ID
	Name    string
	Unit    string // the only unit it is stored and printed in
	Kind    Kind
	Parent  ID      // empty for the root, riders and figures
	Molar   float64 // g/mol; 0 where no single formula exists
	Phase   string  // water, dissolved, suspended, fat, gas; empty for figures
	Aliases []string
	Source  string
	Order   int     // position in the vocabulary
	PerGram float64 // units in one gram; 0 for units that are not masses
}

// InLedger reports whether the ledger carries a column of it.
func (c *Constituent) InLedger() bool {
	return c.Kind == Leaf || c.Kind == Rest || c.Kind == Rider
}

var vocabulary = sync.OnceValue(readVocabulary)

type index struct {
	all  []*Constituent
	byID map[ID]*Constituent
}

// All gives the vocabulary in the order of data/constituents.csv: parents
// before their parts.
func All() []*Constituent { return vocabulary().all }

// Find gives a constituent by its id or one of its aliases.
func Find(name string) (*Constituent, bool) {
	c, ok := vocabulary().byID[ID(name)]
	return c, ok
}

// Must gives a constituent that the code itself names; it panics if the
// vocabulary lacks it.
func Must(id ID) *Constituent {
	c, ok := vocabulary().byID[id]
	if !ok {
		panic("constituent: the vocabulary lacks " + string(id))
	}
	return c
}

func readVocabulary() index {
	rows := embedded.Rows("constituents.csv")
	ix := index{byID: make(map[ID]*Constituent, 2*len(rows))}
	for i, row := range rows {
		c := &Constituent{
			ID: ID(row.Text("id")), Name: row.Text("name"), Unit: row.Text("unit"), Kind: Kind(row.Text("kind")), Parent: ID(row.Text("parent")),
			Phase: row.Text("phase"), Aliases: strings.Fields(row.Text("aliases")), Source: row.Text("source"), Order: i,
		}
		if formula := row.Text("formula"); formula != "" {
			var err error
			if c.Molar, err = MolarMass(formula); err != nil {
				row.Fail("%v", err)
			}
		}
		c.PerGram, _ = unit.PerGram(c.Unit)
		ix.all = append(ix.all, c)
		for _, name := range append(c.Aliases, string(c.ID)) {
			if _, taken := ix.byID[ID(name)]; taken {
				row.Fail("%s is named twice", name)
			}
			ix.byID[ID(name)] = c
		}
	}
	return ix
}
