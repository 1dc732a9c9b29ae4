package food

import (
	"math"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// Own is the table of the foods that a drink file describes.
const Own = "own"

// ID names a food: the table and the food's code in it, code as the publisher
// writes it. What a step makes stands in no table: its code says in words what it is.
type ID struct {
	Table string
	Code  string
}

// String gives "table:code", or the words of what a step makes.
func (id ID) String() string {
	if id.Table == "" {
		return id.Code
	}
	return id.Table + ":" + id.Code
}

// Works is the table whose works stand behind a food's figures: our own for what a step
// makes.
func (id ID) Works() string {
	if id.Table == "" {
		return coreTable
	}
	return id.Table
}

// Food is one row of a table as published: nothing derived, nothing dropped.
type Food struct {
	ID             ID
	Names          []Name // the first is the one to print
	Group          string // of data/groups.csv; empty if no rule knows
	PublisherGroup string // as the table has it
	Values         []Value
	Density        Density
	Edible         float64 // edible share, 0..1; None if not stated
	Portions       []Portion
	Marks          []Mark
	Chemical       bool   // pure substance by formula: its composition has no spread
	Note           string // what the publisher or the core table says of the food

	// What a label says and people search for. A reader of a table gives it to the store; where foods are shown it
	// is part of the note.
	Article  string // number of the article (GTIN), fourteen digits; empty if not stated
	Declared string // what it is made of, as declared
}

// Name gives the name to print, or the id if the food has none.
func (f *Food) Name() string {
	if len(f.Names) == 0 {
		return f.ID.String()
	}
	return f.Names[0].Text
}

// Value gives the value of a constituent.
func (f *Food) Value(id constituent.ID) (Value, bool) {
	for _, v := range f.Values {
		if v.Constituent == id {
			return v, true
		}
	}
	return Value{}, false
}

// Name is one name of a food.
type Name struct {
	Language string // ISO 639-1
	Text     string
}

// Value is what a table says about one constituent, per 100 g edible part.
type Value struct {
	Constituent constituent.ID // of the vocabulary, or "table:number" for a column without an id
	Amount      float64        // in the vocabulary's unit; None for trace, below and unknown
	SD          float64        // standard deviation between samples; None if not stated
	N           int            // samples; 0 if not stated
	Low, High   float64        // least and greatest found; None if not stated
	Limit       float64        // trace, below, unknown: the most it can be; None if not stated
	State       estimate.State
	Source      string // id of a source.Work of the same table, or the table's own code for it
	Ref         string // the row or place in the source
	Line        int    // of the publisher's file of values; 0 if it was not kept
	By          string // ByKin: what the food gains where it enters the ledger; empty of all that a table states
}

// Portion is a household measure of a food.
type Portion struct {
	Name  string
	Grams float64
	SD    float64 // None if not stated
}

// Density is mass per volume at about 20 °C.
type Density struct {
	GramsPerMl float64 // None if not known
	SD         float64
	Source     string
}

// Mark is something that is known of a food besides its composition.
type Mark struct {
	Kind   string // "allergen", "caution" or "added sugar"
	Value  string // a leaf code; empty means that there is none of this kind
	Share  float64
	Source string
}

// None stands for a number that nobody has stated. It is not zero.
var None = math.NaN()

// Stated reports whether a number has been stated.
func Stated(x float64) bool { return !math.IsNaN(x) }

// Column is a column of a table: what the publisher calls it and where it goes.
type Column struct {
	ID          constituent.ID // where its values are kept: a vocabulary id or "table:number"
	Number      string         // the publisher's own number or code
	Name        string
	Unit        string // as the publisher prints it
	Decimals    int    // decimals printed; -1 if not stated
	Constituent bool   // ID is of the vocabulary
}
