package drink

import (
	"fmt"
	"reflect"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// Step is one preparation step of a component or of the finish. The concrete
// types below are the whole grammar; prep computes those that it can and the
// rest are refused by name. The parser makes pointers: a type switch reads
// "case *drink.Reduce".
type Step interface {
	Kind() string     // the keyword, such as "reduce"
	At() fail.Place   // where the keyword stands
	StepPath() string // identity, stable under edits elsewhere: "cherry syrup/strain~2"
	Lines() []Line    // the ingredients that it brings into the pot, if only for a while
	Said() string     // what the sheet says of how it was read; usually empty

	setHead(Head)
	tell(string)
	list() *[]Line
}

// Head is what every step carries. Its lines stand here and not in the steps that have
// some, so that no step can hold lines that a reader of all lines does not find.
type Head struct {
	Word        string
	Place       fail.Place
	Path        string
	Ingredients []Line
	Echo        string
	Told        string // what was said of it and changes no figure: "4 °C, 12 h"
}

// Kind gives the keyword.
func (h Head) Kind() string { return h.Word }

// At gives the place of the keyword.
func (h Head) At() fail.Place { return h.Place }

// StepPath gives the stable path.
func (h Head) StepPath() string { return h.Path }

// Lines gives the ingredients, none for most steps.
func (h Head) Lines() []Line { return h.Ingredients }

// Said gives what the word was that the file has instead, and what of it changes no figure.
func (h Head) Said() string {
	if h.Told == "" {
		return h.Echo
	}
	return strings.TrimPrefix(h.Echo+"; "+h.Told+" changes no figure: "+h.Word+" is calculated from what came of it", "; ")
}

// tell notes what changes no figure.
func (h *Head) tell(text string) { h.Told = strings.TrimPrefix(h.Told+", "+text, ", ") }

// list lets the parser take lines out.
func (h *Head) list() *[]Line { return &h.Ingredients }

// setHead lets the parser fill the head of any step type.
func (h *Head) setHead(to Head) { *h = to }

// WithLines gives a step as it is, with other ingredients.
func WithLines(s Step, lines []Line) Step {
	next := reflect.New(reflect.TypeOf(s).Elem())
	next.Elem().Set(reflect.ValueOf(s).Elem())
	other, _ := next.Interface().(Step)
	*other.list() = lines
	return other
}

// Reduce boils water off: to a mass, or by a share of the pot's mass. One of
// the two is set.
type Reduce struct {
	Head
	To *unit.Amount // mass
	By *Quantity    // %
	Boil
}

// Boil is how hot and how long a pot is kept: both are set, or neither.
type Boil struct {
	Temperature *Quantity // °C
	Minutes     *Quantity // min
}

// Stated reports whether anybody has said so.
func (b Boil) Stated() bool { return b.Temperature != nil && b.Minutes != nil }

// Strain holds suspended solids back; Press does so under force.
type Strain struct {
	Head                // "strain" or "press"
	Collect unit.Amount // mass
	Through string      // cloth, paper, metal, sieve or bag
}

// Curdle separates curd and whey.
type Curdle struct {
	Head
	Collect     unit.Amount // mass of the whey
	By          string      // acid or rennet
	Temperature *Quantity   // °C; nil if not stated
}

// Brew extracts coffee or tea: two of the three figures are set.
type Brew struct {
	Head
	Out      *unit.Amount // mass in the cup
	Strength *Quantity    // % dissolved solids in the cup
	Yield    *Quantity    // % of the dose that went into the cup
}

// Steep extracts solids from ingredients that are taken out again.
type Steep struct {
	Head
	Minutes     *Quantity    // min, whatever unit was written; nil if not stated
	Temperature *Quantity    // °C; nil if not stated
	Collect     *unit.Amount // mass; nil if not stated
}

// Add puts ingredients into the pot.
type Add struct{ Head }

// Chill melts ice into the drink: as much as was weighed, or as cools it from one
// temperature to another. Melt is set, or From and To.
type Chill struct {
	Head
	Melt *unit.Amount // mass
	From *Quantity    // °C
	To   *Quantity    // °C
	Ice  *Quantity    // °C, of the ice; nil: 0 °C
}

// Cool cools without ice.
type Cool struct {
	Head
	To Quantity // °C
}

// Convert splits starch into a sugar.
type Convert struct {
	Head
	Starch Quantity // % of it that is split
	To     string   // glucose or maltose
}

// Clarify takes out what makes a liquid cloudy, by an agent that goes with it or by force.
type Clarify struct {
	Head                    // its ingredients are the agent
	By          string      // milk, egg white, gelatine, agar or centrifuge
	Collect     unit.Amount // mass
	Temperature *Quantity   // °C; nil if not stated
}

// Dilute adds water to a mass or to a reading. One of the two is set.
type Dilute struct {
	Head
	To   *unit.Amount // mass
	Brix *Quantity    // °Brix
}

// Invert splits sucrose into glucose and fructose: a stated share, or pH,
// temperature and time together.
type Invert struct {
	Head
	Share       *Quantity // %
	PH          *Quantity
	Temperature *Quantity // °C
	Minutes     *Quantity // min
}

// Hydrolyse splits lactose.
type Hydrolyse struct {
	Head
	Lactose Quantity // % of it that is split
}

// Ferment turns sugars into alcohol and acids. Figures are what is in 100 g of the pot
// afterwards, Brix and ABV what was read of it then. Readings before it, and those
// afterwards that do not say what was made, are steps of their own beside it.
type Ferment struct {
	Head
	Figures     []Stated
	Brix        *Quantity // °Brix afterwards; nil if not read
	ABV         *Quantity // % afterwards; nil if not read
	Minutes     *Quantity // min; nil if not stated
	Temperature *Quantity // °C; nil if not stated
	Because     string

	before, after *Measured
}

// Caramelise burns sugar: a share of it, or until the pot weighs so much. One of the two
// is set, or both.
type Caramelise struct {
	Head
	Loss *Quantity    // % of the pot's sugars
	To   *unit.Amount // mass
}

// Concentrate takes water out without heat.
type Concentrate struct {
	Head
	By          string      // freezing or vacuum
	To          unit.Amount // mass
	Temperature *Quantity   // of the freezer; nil if not stated
}

// Said adds that under vacuum the temperature changes no figure.
func (s Concentrate) Said() string {
	h := s.Head
	if s.Temperature != nil && s.By != "freezing" {
		h.tell(fmt.Sprintf("%g °C", s.Temperature.Number))
	}
	return h.Said()
}

// Wash moves flavour from a fat into the drink and takes the fat out again.
type Wash struct {
	Head                 // its ingredients are the fat
	Collect *unit.Amount // mass; nil if not stated
}

// Heat applies the published retention factors of one code, or keeps the pot hot for a
// time. One of the two is set, or both.
type Heat struct {
	Head
	Code string // verbatim; "" if not stated
	Boil
}

// Adjust brings the pot to a reading with a food, whose dose is calculated. One of the
// three is set. Its one ingredient is a gram of that food.
type Adjust struct {
	Head
	PH   *Quantity
	TA   *Quantity // as of Measured
	Brix *Quantity // °Brix
}

// Split keeps stated shares: the designer's own figures, marked so.
type Split struct {
	Head
	Keep    []Kept
	Collect *unit.Amount // mass; nil if not stated
	Because string
}

// Kept is the share of a constituent that split keeps.
type Kept struct {
	Tag   string
	Place fail.Place
	Share Quantity // %
}

// Carbonate dissolves gas. Bottle, Charge and Temperature are set together, or
// Left alone, or all four.
type Carbonate struct {
	Head
	Bottle      *unit.Amount // volume
	Charge      *unit.Amount // mass of CO2
	Temperature *Quantity    // °C
	Left        *Quantity    // g/l that stays in the glass
}

// Foam puts bubbles in. Charge and Gas are set together, or Overrun, or all three; Bottle
// only with a charge.
type Foam struct {
	Head
	Charge      *unit.Amount // mass of the gas
	Gas         string       // N2O, CO2 or N2; "": air
	Bottle      *unit.Amount // volume
	Temperature *Quantity    // °C
	Overrun     *Quantity    // % of the liquid's volume
	Left        *Quantity    // g/l of CO2 that stays in the glass
}

// Treat is a technique that changes nothing of the composition that anybody could calculate.
type Treat struct {
	Head
	Technique string // in the designer's words: "smoked, apple wood"
}

// Measured holds readings of the pot at that moment. At least one is set.
type Measured struct {
	Head
	Mass      *unit.Amount
	Brix      *Quantity
	TDS       *Quantity // %
	PH        *Quantity
	TA        *Quantity // g/l, g/100 g, g/100 ml or % (of the mass), as citric acid
	Density   *Quantity // g/ml
	ABV       *Quantity // %
	Titration []TitrationPoint
	Base      *Quantity    // mol/l of the base; with Titration it or Acid is set
	Acid      *Quantity    // mol/l of the acid; the pH falls
	Sample    *unit.Amount // mass or volume titrated; set with Titration
	Meters    []Word       // the names of those that read it
	Day       int          // on which it was read (unit.Day); 0: nobody says
	Logged    []Logged     // those of its readings that the bench log has
}

// TitrationPoint is one reading of a bench titration.
type TitrationPoint struct {
	Place  fail.Place
	Volume unit.Amount // of base or acid added so far; a volume
	PH     float64
}
