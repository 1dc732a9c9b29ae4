package main

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// The rules by which two tables' figures are the same quantity (as data/crossrules_test.go).
const (
	leastPlaces  = 3   // a figure of fewer last places is mostly rounding
	unbalanced   = 0.1 // of the carbohydrate by difference: sugars of such a row are left out
	fewestToTell = 4   // cells: a row with fewer cannot show that it was copied
	fivefold     = 5   // of a table that is doubted, a figure further off is an error (our own bound)
	threefold    = 3   // a column of which half the foods lie further off is of another quantity (our own bound)
	foodsToDoubt = 10  // that many foods of a column at least
	digitsToTell = 3   // digits alike that are no accident
)

// figure is what one table says of one constituent of a food.
type figure struct {
	amount float64 // per 100 g as bought, in the unit of the vocabulary
	half   float64 // of the last place
	works  []string
	own    bool // a figure that the table printed, not one made from others
}

// entry is a food in one table.
type entry struct {
	from    *shelf
	figures map[constituent.ID]figure
}

// basket is a food of the core table and the same food in others.
type basket struct {
	code, group string
	core        *food.Food
	entries     []entry // the core table's first
}

// fill makes the baskets of data/crosswalk.csv, in its order: what is the same food by its
// description and alike in water and fat (match A).
func fill(own *shelf, others []*shelf) []*basket {
	byName := map[string]*shelf{}
	for _, s := range others {
		byName[s.format] = s
	}
	baskets := map[string]*basket{}
	var list []*basket
	for _, row := range embedded.Rows("crosswalk.csv") {
		s := byName[row.Text("table")]
		if s == nil || row.Text("match") != "A" {
			continue
		}
		f := s.foods[row.Text("code")]
		if f == nil {
			row.Fail("%s has no food %s", s.format, row.Text("code"))
		}
		code := row.Text("core")
		b := baskets[code]
		if b == nil {
			core := own.foods[code]
			b = &basket{code: code, group: core.Group, core: core, entries: []entry{own.enter(core, own)}}
			baskets[code] = b
			list = append(list, b)
		}
		b.entries = append(b.entries, s.enter(f, own))
	}
	return list
}

// enter brings a food to the definitions of the vocabulary and keeps what its table found.
func (s *shelf) enter(f *food.Food, agency *shelf) entry {
	e := entry{s, map[constituent.ID]figure{}}
	profile := food.Enter(f, nil)
	balanced := s.balanced(f, profile)
	for _, c := range constituent.All() {
		cell := profile.Cells[c.Order]
		if c.PerGram == 0 || c.ID == constituent.Available || !slices.Contains(compared(), c.ID) {
			continue
		}
		if !cell.Known || cell.Amount == 0 || cell.Limit > 0 || cell.State == estimate.Assumed || s.marks && cell.State != estimate.Measured {
			continue
		}
		if within(c.ID, constituent.Sugar) && !balanced || cell.By != "" || strings.Contains(cell.Why, "orrowed") || strings.HasPrefix(cell.Source, food.Borrowed) {
			continue
		}
		last := s.last[c.ID]
		if last == 0 {
			last = agency.last[c.ID]
		}
		v, printed := f.Value(c.ID)
		amount := cell.Amount * 100 * c.PerGram
		if amount < leastPlaces*last || c.Kind == constituent.Parent && !printed {
			continue
		}
		e.figures[c.ID] = figure{amount, last / 2, strings.Fields(v.Source), printed}
	}
	return e
}

func within(id, total constituent.ID) bool {
	for ; id != ""; id = constituent.Must(id).Parent {
		if id == total {
			return true
		}
	}
	return false
}

// balanced reports whether sugars and starch that were analysed make up the food's own
// carbohydrate by difference.
func (s *shelf) balanced(f *food.Food, profile *food.Profile) bool {
	sum, ok := f.Value(constituent.Available)
	if !s.analysed || !ok || !food.Stated(sum.Amount) {
		return true
	}
	left := 1 - profile.Cell(constituent.OrganicAcids).Amount
	for _, id := range []constituent.ID{constituent.Water, "PROCNT", "FAT", "ASH", "FIBTG"} {
		left -= profile.Cell(id).Amount
	}
	return math.Abs(sum.Amount-100*left) <= unbalanced*100*left
}

// comparison is one constituent of one food in two tables.
type comparison struct {
	id          constituent.ID
	code, group string
	table       string
	apart       float64 // |ln ratio|, as far as rounding does not explain it
	printed     float64 // |ln ratio|
}

// compare sets the core table beside the others, where neither took from the other.
func (b *basket) compare() []comparison {
	var all []comparison
	ours := b.entries[0]
	for _, theirs := range b.entries[1:] {
		if copied(ours, theirs) {
			continue
		}
		for _, id := range compared() {
			x, here := ours.figures[id]
			y, there := theirs.figures[id]
			if !here || !there || taken(theirs, x, y) || theirs.from.doubts(id, x, y) {
				continue
			}
			if id == constituent.Water {
				x.amount, y.amount = lesser(x.amount, y.amount)
			}
			all = append(all, comparison{id, b.code, b.group, theirs.from.format, apart(x, y), math.Abs(math.Log(x.amount / y.amount))})
		}
	}
	return all
}

// strangers marks the columns of each table that cannot be of the quantity that they are named
// for: half of their foods lie three times off, or more.
func strangers(baskets []*basket) {
	type column struct {
		of *shelf
		id constituent.ID
	}
	apart := map[column][]float64{}
	for _, b := range baskets {
		for _, e := range b.entries[1:] {
			for id, y := range e.figures {
				if x, ok := b.entries[0].figures[id]; ok {
					apart[column{e.from, id}] = append(apart[column{e.from, id}], math.Abs(math.Log(x.amount/y.amount)))
				}
			}
		}
	}
	for at, distances := range apart {

		at.of.strange[at.id] = len(distances) >= foodsToDoubt && median(distances) > math.Log(threefold)
	}
}

// doubts reports whether a figure that the table prints cannot be of the same quantity.
func (s *shelf) doubts(id constituent.ID, x, y figure) bool {
	return s.strange[id] || s.doubted != "" && within(id, s.doubted) && apart(x, y) > math.Log(fivefold)
}

// lesser gives the solids of foods that are mostly water: water is as sure as the lesser of
// both (food.Spreads).
func lesser(x, y float64) (float64, float64) {
	if x+y > 100 {
		return 100 - x, 100 - y
	}
	return x, y
}

// apart is how far two figures lie from each other at least, as a logarithm, if each may be
// half a last place more or less than printed.
func apart(x, y figure) float64 {
	if x.amount > y.amount {
		x, y = y, x
	}
	return max(math.Log(max(y.amount-y.half, 0)/(x.amount+x.half)), 0)
}

// taken reports whether one figure is the other: the core table cites that table, or three
// digits or more are the same.
func taken(theirs entry, x, y figure) bool {
	cites := func(work string) bool { return slices.Contains(strings.Fields(theirs.from.inCore), work) }
	return slices.ContainsFunc(x.works, cites) || x.own && y.own && alike(x.amount, y.amount, digitsToTell)
}

// copied reports whether most figures of two rows are the same to the digit printed.
func copied(one, other entry) bool {
	same, of := 0, 0
	for id, x := range one.figures {
		y, ok := other.figures[id]
		if !ok || !x.own || !y.own {
			continue
		}
		of++
		if alike(x.amount, y.amount, 1) {
			same++
		}
	}
	return of >= fewestToTell && 2*same > of
}

// alike reports whether two figures are the same as far as the one that is printed with
// fewer decimals goes, in as many digits at least.
func alike(x, y float64, digits int) bool {
	a, b := printed(x), printed(y)
	places := min(decimals(a), decimals(b))
	a, b = strconv.FormatFloat(x, 'f', places, 64), strconv.FormatFloat(y, 'f', places, 64)
	return a == b && len(strings.TrimLeft(strings.ReplaceAll(a, ".", ""), "0")) >= digits
}

// printed gives a figure without what arithmetic has left behind its digits.
func printed(x float64) string {
	const digits = 10
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', digits, 64), 64)
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

func decimals(number string) int {
	_, after, _ := strings.Cut(number, ".")
	return len(after)
}
