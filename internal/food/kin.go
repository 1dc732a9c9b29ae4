package food

import (
	"math"
	"slices"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/phrase"
	"sipsum/internal/unit"
)

// ByKin marks a cell whose share of a total nobody measured: its botanical kin have it.
const ByKin = "kin"

// NoKin is what data/kins.csv calls foods that no kin speaks for, with the reason.
const NoKin = "none"

// Kin is a row of data/kins.csv: foods whose single acids resemble each other.
type Kin struct {
	Name   string
	Note   string
	groups []string
	words  phrase.List
	unless phrase.List
	foods  []string // codes of the core table, whatever their names
	shares []kinShare
}

// kinShare is a row of data/kin_shares.csv.
type kinShare struct {
	acid        *constituent.Constituent
	share, sd   float64
	least, most float64
	rows        string // those of the kin, and where they stand
}

var kins = sync.OnceValue(func() []*Kin {
	var list []*Kin
	byName := map[string]*Kin{}
	for _, row := range embedded.Rows("kins.csv") {
		k := &Kin{
			Name: row.Text("kin"), Note: row.Text("note"), groups: strings.Split(row.Text("groups"), "|"),
			words: phrase.Read(row.Text("words")), unless: phrase.Read(row.Text("unless")), foods: strings.Fields(row.Text("foods")),
		}
		byName[k.Name] = k
		list = append(list, k)
	}
	for _, row := range embedded.Rows("kin_shares.csv") {
		k := byName[row.Text("kin")]
		k.shares = append(k.shares, kinShare{
			acid: constituent.Must(constituent.ID(row.Text("constituent"))), share: row.Number("share"), sd: row.Number("sd"),
			least: row.Number("low"), most: row.Number("high"), rows: row.Text("rows") + " (" + row.Text("source") + ")",
		})
	}
	return list
})

// KinOf finds the kin of a food: by its code in the core table, else by its group and its
// names. ok is false where no row speaks of it, or where two kins do: a drink of two
// fruits is neither.
func KinOf(f *Food) (k *Kin, ok bool) {
	if f.ID.Table == coreTable {
		for _, k := range kins() {
			if slices.Contains(k.foods, f.ID.Code) {
				return k, true
			}
		}
	}
	subject := subjectOf(f)
	for _, other := range kins() {
		switch {
		case other == k || !slices.Contains(other.groups, f.Group) || !subject.called(other.words) || subject.called(other.unless):
		case other.Name == NoKin:
			return other, true
		case k != nil:
			return nil, false
		default:
			k = other
		}
	}
	return k, k != nil
}

// worthATotal is the least share of acids that a food lacks for its titratable acidity to
// stand for a total of them (our own bound: what is less is no main acid).
const worthATotal = 0.1

// split is a total of acids whose parts its kin shares out.
type split struct {
	*entry
	kin   *Kin
	total Cell
	f     float64 // how far the shares of the kin lie apart
	parts []Part
}

// splitOf gives a food with a total of acids, or a titratable acidity, the single acids
// that nobody measured in it, as its kin shares them out; nil where there is nothing to
// share. What is measured stands, and the others take no more than it leaves of the total,
// if that is more than the total's own standard deviation. A published limit stands too: an
// acid that the kin would put above it stays unknown.
func splitOf(e *entry) *split {
	acids := constituent.Must(constituent.OrganicAcids)
	_, titrated := e.figures[titratable]
	if e.Food.Chemical || !e.published[acids.Order] && !titrated {
		return nil
	}
	s := &split{entry: e, total: *e.cell(acids)}
	of := e.Food
	if e.Lender != nil && s.total.From == e.Lender.ID {
		of = e.Lender
	}
	kin, ok := KinOf(of)
	if !ok || kin.Name == NoKin {
		return nil
	}
	if s.kin, s.f = kin, kin.spread(); !e.published[acids.Order] {
		s.total = s.titrated()
	}
	if !(s.total.Amount > 0) || s.total.Limit > 0 || !s.share() {
		return nil
	}
	*e.cell(acids), e.published[acids.Order] = s.total, true
	return s
}

// share gives the acids that are not known their part of the total, if there is one.
func (s *split) share() bool {
	room, asked := s.total.Amount, 0.0
	for _, leaf := range constituent.Sums().Leaves(constituent.OrganicAcids) {
		if s.published[leaf.Order] {
			room -= s.Cells[leaf.Order].Amount
		}
	}
	for _, of := range s.kin.shares {
		if !s.published[of.acid.Order] {
			asked += of.share * s.total.Amount
		}
	}
	// Trifles are no reason to read a total out of a titration.
	if asked == 0 || room <= max(s.total.SD, dust) || s.total.By == ByKin && asked < worthATotal*s.total.Amount {
		return false
	}
	for _, of := range s.kin.shares {
		if of.acid.Kind == constituent.Rest || s.published[of.acid.Order] {
			continue
		}
		cell := s.cell(of.acid)
		switch amount := of.share * s.total.Amount * min(1, room/asked); {
		case amount == 0 && !Stated(cell.Bound):
			cell.Bound, cell.Why = of.most*s.total.Amount, "by kin, "+s.kin.Name+": not found in "+of.rows
		case amount > 0 && !(amount > cell.Bound): // of None nothing is known
			s.parts = append(s.parts, Part{of.acid, cell.Bound})
			*cell = s.part(of, amount)
			s.published[of.acid.Order] = true
		}
	}
	return len(s.parts) > 0
}

// spread is f of the kin, by which its shares differ: var = share · (1 − share) · f.
func (k *Kin) spread() float64 {
	for _, s := range k.shares {
		if s.sd > 0 {
			return s.sd * s.sd / s.share / (1 - s.share)
		}
	}
	return 0
}

// part is an acid of the split: its amount varies as the total does and as its share.
func (s *split) part(of kinShare, amount float64) Cell {
	share := amount / s.total.Amount
	return Cell{
		Known: true, Amount: amount, SD: amount * math.Hypot(math.Sqrt(s.f*(1-share)/share), s.total.SD/s.total.Amount), State: estimate.Calculated,
		Bound: None, Source: s.total.Source, From: s.total.From, Row: s.total.Row, By: ByKin, Apart: s.apart(amount),
		Why: "by kin, " + s.kin.Name + ": as in " + of.rows,
	}
}

// apart is the relative spread of a part before those of a draw are brought to what there
// is to share. Brought so, gamma variates of the relative variance f / share make shares
// with the spread of the kin (Dirichlet).
func (s *split) apart(amount float64) float64 { return math.Sqrt(s.f * s.total.Amount / amount) }

// keep keeps the total and its parts for the draws: what is left of it has no name.
func (s *split) keep() {
	acids, rest := constituent.Must(constituent.OrganicAcids), constituent.Must(constituent.RestOf(constituent.OrganicAcids))
	if cell := s.cell(rest); cell.Amount > 0 {
		cell.Apart, cell.Class = s.apart(cell.Amount), false
	}
	s.Totals = append(s.Totals, Total{Constituent: acids, Cell: s.total, Parts: append(s.parts, Part{rest, None})})
}

// titrated is the total of acids that a published titratable acidity stands for, taken
// as the kin's acids, with all of their protons: the base that titrates them is less by
// what the metals hold already, and more by what phosphate and protein take.
func (s *split) titrated() Cell {
	v := s.figures[titratable]
	if !Stated(v.Amount) {
		return Cell{}
	}
	protons := 0.0 // mol in a gram of the kin's acids
	for _, of := range s.kin.shares {
		c := of.acid
		if c.Kind == constituent.Rest {
			c = constituent.Must(citric)
		}
		for _, a := range organicAcids() {
			if a.Constituent == c {
				protons += of.share * float64(len(a.pK)) / a.Molar
			}
		}
	}
	const citricProtons = 3
	amount := v.Amount / unit.Hundred * citricProtons / constituent.Must(citric).Molar / protons
	_, relative := Unmeasured("titratable acidity")
	if Stated(v.SD) {
		relative = max(relative, v.SD/v.Amount)
	}
	_, off := Unmeasured("acids by titration")
	return Cell{
		Known: true, Amount: amount, SD: amount * math.Hypot(relative, off), State: estimate.Calculated, Bound: None,
		Source: v.Source, From: s.Food.ID, Row: s.Food.ID.String(), By: ByKin,
		Why: "by kin, " + s.kin.Name + ": its titratable acidity as their acids",
	}
}
