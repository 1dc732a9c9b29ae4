package drink

import (
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// Drink is a parsed drink file. Lists keep the order of the file; what a pantry
// brings stands before what the drink itself says.
type Drink struct {
	File   string
	Name   string
	Serves int
	Service
	Instruments
	Rules       []Word   // label rules: eu, us, …
	CompareWith string   // a component's name, "" if not stated
	CompareAlso []string // of further ones, in the order of the file

	Foods      []OwnFood
	Components []Component
	Build      []Line
	Finish     []Step
	Garnish    []Line
	MayContain []Word // leaf codes of allergens

	Categories []Category
	Claims     []Claim
	Targets    []Target
	Vary       []Vary
	Note       string // a remark, "" if there is none

	Reading
}

// Service is how a drink comes before a guest.
type Service struct {
	Glass  *unit.Amount // volume per serving; nil if not stated
	Vessel string       // of what the glass, mug or cup is; "" if not stated
	At     *Quantity    // temperature, °C; nil if not stated
	Aroma  []Aroma      // what is only smelled
	Takes  *Quantity    // from the first movement to the last serving, minutes; nil if not stated
	Tasks  []Task       // steps of finish that say how long they take, in their order
	Stands *Stands      // how a glass stands once it is poured; nil if not stated
}

// Word is an entry of a list that is judged further up, where it is known which there are.
type Word struct {
	Place fail.Place
	Text  string
}

// Line is one ingredient: of a component, of the build, of a step, or a garnish.
type Line struct {
	Place   fail.Place
	Path    string      // identity, stable under edits elsewhere: "cherry syrup/core:citric-acid"
	Amount  unit.Amount // zero if given by portion; of kind Share it is a share of the list's other lines
	Food    string      // a component's name, table:code, or the name of a food; verbatim
	FoodAt  fail.Place  // where Food begins
	Portion string      // a portion of the food's table, with Count
	Count   float64     // > 0 if Portion is set
	Counted bool        // Portion is a word of data/portion_words.csv, by which the food's portion is found
	As      string      // "", "edible" or "whole"
	Fill    string      // table:code that lends what the food does not state
	Note    string
	Eaten   bool // false only for a garnish; and of a garnish unless it says so
}

// Component is a house-made part of the drink.
type Component struct {
	Name        string
	Place       fail.Place
	Ingredients []Line
	Steps       []Step
	Measured    *Measured // after the last step; nil if nothing was read
	Keeps       *Keeps    // nil if not stated
	Vessel      string    // in which it is made or kept, "" if not stated
	Note        string    // a remark, "" if there is none
}

// Keeps is how long a component is kept and how cold.
type Keeps struct {
	Place fail.Place
	Days  float64
	At    *Quantity // °C; nil if not stated
}

// OwnFood is a food that the drink file describes itself: own:CODE.
type OwnFood struct {
	Code      string
	Place     fail.Place
	Name      string
	Group     string
	Fill      string // table:code that lends what the values do not state
	FillAt    fail.Place
	Per       unit.Amount // what the values refer to: a mass or a volume
	Density   *Quantity   // g/ml; nil if not stated
	Declared  string      // the rules by which its pack declares the values; "" if not stated
	Values    []Stated
	Coffee    *Coffee // nil if it is none, or nothing is stated of it
	Allergens []Word  // leaf codes
	Assessed  bool    // the allergens key is present: somebody looked
	Source    string
	Price     *Price // nil if not stated
	Lot, Best string // the lot it is of, and best before; "" if not stated
}

// Stated is one figure that the designer states for a constituent. With
// State "" it is the Quantity. For the other states Number means nothing.
type Stated struct {
	Tag   string
	Place fail.Place
	State string  // "", Trace, Below or Unknown
	Limit float64 // for Below, in Unit: the figure is less than this
	Quantity
}

// The states that a stated figure may have instead of a number.
const (
	Trace   = "trace"
	Below   = "below"
	Unknown = "unknown"
)

// Quantity is a number in a unit that is not a kitchen measure.
type Quantity = unit.Quantity

// Category is a sensory category and the constituents that speak for it.
type Category struct {
	Name  string
	Place fail.Place
	Tags  []string
}

// Claim is a sentence for the stage and the check that decides it.
type Claim struct {
	Place   fail.Place
	Say     string
	Check   string     // an expression, kept verbatim
	CheckAt fail.Place // where Check begins
}

// Target is one line of targets, kept verbatim.
type Target struct {
	Place fail.Place
	Check string
}

// Vary is an amount that fit may change, within limits.
type Vary struct {
	Place    fail.Place
	Of       string      // the Food of some line of the drink
	From, To unit.Amount // of one kind, From below To
}

// Component gives a component by its exact name.
func (d *Drink) Component(name string) (*Component, bool) {
	for i := range d.Components {
		if d.Components[i].Name == name {
			return &d.Components[i], true
		}
	}
	return nil, false
}

// OwnFood gives an own food by its code, without "own:".
func (d *Drink) OwnFood(code string) (*OwnFood, bool) {
	for i := range d.Foods {
		if d.Foods[i].Code == code {
			return &d.Foods[i], true
		}
	}
	return nil, false
}
