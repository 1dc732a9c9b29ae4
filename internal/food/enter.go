package food

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/unit"
)

// Enter makes the profile of a food, borrowing from a lender what the food does
// not state. lender is nil where nothing is borrowed.
func Enter(f, lender *Food) *Profile { return anywhere().Enter(f, lender) }

// Enter makes the profile of a food by what is known of foods of a name.
func (a *Anywhere) Enter(f, lender *Food) *Profile { return a.enter(f, lender).Profile }

func (a *Anywhere) enter(f, lender *Food) *entry {
	e := &entry{
		Profile:   &Profile{Food: f, Lender: lender, Cells: make([]Cell, len(constituent.All()))},
		published: make([]bool, len(constituent.All())),
		there:     make([]bool, len(constituent.All())),
		figures:   map[constituent.ID]Value{},
		subject:   subjectOf(f),
	}
	e.read(f)
	if lender != nil {
		e.lent = a.enter(lender, nil)
		e.borrow(lender)
	}
	e.derive()
	e.assumeZeros()
	e.split = splitOf(e)
	e.balance()
	// guard: a name states its strength
	e.strong = fixStrength(e)
	e.narrow()
	e.close()
	e.bound()
	e.boundGas()
	e.addedSugar()
	a.widen(e)
	allow(e)
	lending{e}.inherit()
	if e.WaterGone = waterGone(e.subject, e.Cell(constituent.Water)); e.WaterGone > 0 {
		e.AddedShare = 0 // what is added of its sugars hangs on what the drink brings back
	}
	return e
}

// entry is a profile in the making. published marks the cells, parents
// included, that stand on a figure of their own rather than on their parts; there
// marks those of which somebody found a trace.
type entry struct {
	*Profile
	lent         *entry // of the lender, by itself; nil if there is none
	published    []bool
	there        []bool // it may be: a trace of it, or whoever made the food says that nobody knows
	subject      subject
	figures      map[constituent.ID]Value
	split        *split // of the organic acids; nil if there is none
	waterDerived bool
	strong       bool // its name fixes its alcohol
}

func (e *entry) cell(c *constituent.Constituent) *Cell { return &e.Cells[c.Order] }

func (e *entry) note(kind string, id constituent.ID, format string, args ...any) {
	e.Notes = append(e.Notes, Note{Kind: kind, Constituent: id, Text: fmt.Sprintf(format, args...)})
}

// read takes the values that the food itself states.
func (e *entry) read(f *Food) {
	for i := range e.Cells {
		e.Cells[i] = Cell{State: estimate.Unknown, Bound: None, From: f.ID}
	}
	lenders := map[string]int{}
	for _, v := range f.Values {
		c, ok := constituent.Find(string(v.Constituent))
		if !ok {
			continue // a column of the table without an id: kept by the store, never calculated
		}
		if c.Kind == constituent.Figure {
			e.figures[c.ID] = v
			continue
		}
		cell, known := cellOf(f, c, v)
		e.Cells[c.Order], e.published[c.Order] = cell, known
		e.there[c.Order] = v.State == estimate.Trace || v.State == estimate.Unknown && f.ID.Table == Own
		if lender, lent := LenderOf(f, v); lent && known && cell.Amount > 0 {
			lenders[lender]++
		}
	}
	for _, lender := range slices.Sorted(maps.Keys(lenders)) {
		e.note("borrowed", "", "%s borrowed from %s", counted(lenders[lender]), lender)
	}
}

// cellOf brings a value to grams per gram.
func cellOf(f *Food, c *constituent.Constituent, v Value) (cell Cell, known bool) {
	scale := 1 / (unit.Hundred * c.PerGram)
	cell = Cell{
		Known: true, Amount: v.Amount * scale, SD: v.SD * scale, State: v.State, Bound: None,
		Source: v.Source, From: f.ID, Row: rowOf(f, v),
	}
	if lender, lent := LenderOf(f, v); lent {
		cell.State, cell.Why, cell.By = max(cell.State, estimate.Calculated), "borrowed from "+lender, Borrowed
	}
	switch {
	case v.State == estimate.Unknown, !Stated(v.Amount) && !Stated(v.Limit):
		cell.Known, cell.Amount, cell.SD, cell.State = false, 0, 0, estimate.Unknown
		if Stated(v.Limit) {
			cell.Bound, cell.Why = v.Limit*scale, "limit stated by "+v.Source
		}
		return cell, false
	case v.State == estimate.Trace || v.State == estimate.Below:
		if Stated(v.Limit) {
			cell.Limit = v.Limit * scale
			cell.Amount, cell.SD = cell.Limit/2, 0
			return cell, true
		}
	}
	sd, class := spreadOf(f, c, v)
	cell.SD, cell.Class = sd*scale, class
	return cell, true
}

// The core table takes most of its figures from one agency's table, row by row:
// there the source row is that table's food.
const (
	coreTable  = "core"
	coreAgency = "sr28"
	agency     = "sr"
)

// Borrowed stands before the works of a figure that a core food has from another food
// of the table: the potassium of a dark roast is the medium roast's. The reference is
// then that food's code. A cell says so too, as one does that a lender has filled.
const Borrowed = "borrowed"

// IsAgencyRow reports whether a figure of the core table is that of one row of the
// agency's table, and not made from several.
func IsAgencyRow(works, ref string) bool {
	return works == coreAgency && ref != "" && strings.Trim(ref, "0123456789") == ""
}

// LenderOf gives the food of the same table that lent a value.
func LenderOf(f *Food, v Value) (lender string, lent bool) {
	lent = f.ID.Table == coreTable && v.Ref != "" && strings.HasPrefix(v.Source, Borrowed+" ")
	return ID{Table: f.ID.Table, Code: v.Ref}.String(), lent
}

// ByOf says whose figure a value is where nobody measured the food's own: ByKin, or
// Borrowed where another food of the table lent it; else empty.
func ByOf(id ID, v Value) string {
	if v.By != "" {
		return v.By
	}
	if _, lent := LenderOf(&Food{ID: id}, v); lent {
		return Borrowed
	}
	return ""
}

// rowOf names the source row of a value. A core food that takes its figure from
// a row of the agency's table shares that measurement with the agency's food and
// with every other core food that takes it, and one that is borrowed is its
// lender's; any other value is its food's own.
func rowOf(f *Food, v Value) string {
	if f.ID.Table == coreTable && IsAgencyRow(v.Source, v.Ref) {
		return ID{Table: agency, Code: v.Ref}.String()
	}
	if lender, lent := LenderOf(f, v); lent {
		return lender
	}
	return f.ID.String()
}
