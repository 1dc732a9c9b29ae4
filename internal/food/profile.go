package food

import (
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
)

// Cell is what is known of one constituent of a food, in grams per gram of
// food.
type Cell struct {
	Known  bool
	Amount float64 // central
	SD     float64
	Limit  float64 // trace and below: uniform on [0, Limit]; else 0
	State  estimate.State
	Bound  float64 // unknown: the most it could be; None if nothing is known
	Why    string  // how it was derived, assumed or bounded
	Source string  // source.Work of the table it came from
	From   ID      // the food whose row it is: a lender's for borrowed cells
	Row    string  // the source row: cells of one row and constituent draw alike
	Class  bool    // SD is a class default
	By     string  // ByKin or Borrowed: nobody measured this food's own; else empty
	Apart  float64 // of a part of a split: the relative spread of its share; else 0
	Most   float64 // no draw has more of it: no more is allowed; 0 if nothing says so
	Tail   float64 // how heavy the tails of its draws are (estimate.Input)
}

// Exact reports whether the cell has no spread.
func (c Cell) Exact() bool { return c.Limit == 0 && (c.SD == 0 || c.Amount == 0) }

// variance is that of a value: of one between zero and a limit, rectangular.
func (c Cell) variance() float64 {
	const rectangular = 12 // JCGM 100:2008, 4.3.7
	return c.SD*c.SD + c.Limit*c.Limit/rectangular
}

// times scales what is known.
func (c *Cell) times(factor float64) {
	c.Amount, c.SD, c.Limit = c.Amount*factor, c.SD*factor, c.Limit*factor
}

// Profile is a food as it enters the ledger.
type Profile struct {
	Food   *Food
	Lender *Food  // nil if nothing was borrowed
	Cells  []Cell // by constituent.Constituent.Order
	Notes  []Note
	Totals []Total

	// AddedShare is the share of the sugars that counts as added; None if not
	// known. Added sugars are drawn as this share of the drawn sugars.
	AddedShare float64

	// WaterGone is the water in grams that would bring a gram to single strength: 0 of all
	// but bought juice concentrates, whose sugars are added as far as nothing brings it.
	WaterGone float64
}

// Total is a published total with a spread of its own. The parts of a draw are
// scaled to a draw of it: fruits differ less in all their sugars than in each.
type Total struct {
	Constituent *constituent.Constituent
	Cell        Cell
	Parts       []Part                   // of a split: those that share what the others leave; nil: all share
	Rest        *constituent.Constituent // takes what the other parts leave before these are scaled; nil: all are scaled
}

// Part is a part of a split total and the most that a table allows it; None if nothing does.
type Part struct {
	Constituent *constituent.Constituent
	Most        float64
}

// Cell gives the cell of a constituent of the vocabulary.
func (p *Profile) Cell(id constituent.ID) Cell { return p.Cells[constituent.Must(id).Order] }

// Note is something the user should know of how a food entered.
type Note struct {
	Kind        string // "over total", "over mass", "contradiction", "borrowed", "derived"
	Constituent constituent.ID
	Text        string
}
