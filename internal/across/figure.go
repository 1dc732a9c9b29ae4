package across

import (
	"maps"
	"math"
	"slices"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/ladder"
	"sipsum/internal/unit"
)

// Standing is how a table stands to a figure.
type Standing string

// The standings.
const (
	Told   Standing = "told"
	Partly Standing = "in part"           // some rows that bring it do not know it
	Absent Standing = "not in this table" // none of them does
	AsCore Standing = "as core"           // no row that is taken brings any
	Unmade Standing = "not made"          // the drink cannot be made so
	Turned Standing = "by a step"         // a step makes of it what hangs on figures that are not of it
)

// Voice is what one table says of a figure.
type Voice struct {
	Table string
	Standing
	composition.Result              // of a serving, other foods as they are
	Lacks              []*food.Food // core foods that bring it and whose rows do not know it
	Own                float64      // the share that its rows bring; the rest stands as the core table has it; NaN: there is none
}

// Speaks reports whether a table tells a figure, and enough of it by its own rows.
func (v Voice) Speaks() bool {
	return v.Standing == Told && v.Own >= unit.LimitOf("what a table has to tell itself", "share").Low
}

// Figure is a constituent of a serving by every table.
type Figure struct {
	Constituent *constituent.Constituent
	Core        composition.Result
	Voices      []Voice // in the order of the tables
	Tables      int     // that tell it
	Speak       int     // of which most of it is their own
	Low, High   float64 // their central figures; NaN if none does
	Most        *Disagreement
}

// Beyond reports whether tables lie outside of the interval of the core table.
func (f Figure) Beyond() bool {
	return !f.Core.Unknown && f.Core.Mean > 0 && (f.Low < f.Core.Low || f.High > f.Core.High)
}

// Disagreement is how far tables lie apart in what one food brings of a constituent.
type Disagreement struct {
	Food        *food.Food // of the core table
	Constituent *constituent.Constituent
	Low, High   float64 // in a serving
	LowBy       string  // the table that says so
	HighBy      string
	Share       float64 // their distance, as a share of the figure of the serving
}

// brought is what the rows of a line bring of a constituent at central values.
type brought struct {
	known, open float64 // in its unit; open: at its most, NaN where nothing bounds it
	unknown     bool
}

// byLine gives what each line of a serving brings.
func byLine(s composition.Sort, rows []string) map[string]brought {
	of := map[string]brought{}
	for row, line := range rows {
		b := of[line]
		if col := s.Of(row); col != nil {
			b.known += col[0] * s.PerGram
		}
		if most := s.UnknownOf(row); most != nil && most[0] != 0 {
			b.unknown, b.open = true, b.open+most[0]*s.PerGram
		}
		of[line] = b
	}
	return of
}

// figure sets what the tables say of a constituent side by side.
func (a *Across) figure(c *constituent.Constituent) Figure {
	f := Figure{Constituent: c, Core: resultOf(a.Core.PerServing, c), Low: math.NaN(), High: math.NaN()}
	core := byLine(composition.SortOf(a.Core.Serving, c), linesOf(a.Core))
	sugars := byLine(composition.SortOf(a.Core.Serving, constituent.Must(constituent.Sugar)), linesOf(a.Core))
	var byFood []map[*food.Food]float64 // by table: what each food brings, of those that it tells
	for i := range a.Tables {
		t := &a.Tables[i]
		v, told := t.voice(c, core, sugars)
		f.Voices, byFood = append(f.Voices, v), append(byFood, told)
		if v.Speaks() {
			f.Speak++
		}
		if v.Standing == Told {
			f.Tables++
			if !(f.Low <= v.Mean) {
				f.Low = v.Mean
			}
			if !(f.High >= v.Mean) {
				f.High = v.Mean
			}
		}
	}
	f.Most = a.furthest(f, byFood)
	return f
}

// voice is what a table says of a constituent, and what each food that it tells brings.
func (t *Table) voice(c *constituent.Constituent, core, sugars map[string]brought) (Voice, map[*food.Food]float64) {
	v := Voice{Table: t.ID, Standing: Unmade, Own: math.NaN()}
	if t.Assay == nil {
		return v, nil
	}
	v.Result = resultOf(t.Assay.PerServing, c)
	here := byLine(composition.SortOf(t.Assay.Serving, c), linesOf(t.Assay))
	within := unit.LimitOf("what a table may leave open", "share").High
	total, taken, lacked, turned, known := 0.0, 0.0, 0.0, 0.0, false
	for _, path := range slices.Sorted(maps.Keys(core)) {
		total += core[path].known
	}
	told := map[*food.Food]float64{}
	for _, path := range slices.Sorted(maps.Keys(t.lines)) {
		of, was, is := t.lines[path], core[path], here[path]
		if was.known <= 0 && is.known <= 0 {
			continue
		}
		taken += max(was.known, is.known)
		if was.known > 0 && lacks(of.by, c, was, is, within) {
			lacked += was.known
			if !slices.Contains(v.Lacks, of.core.Food) {
				v.Lacks = append(v.Lacks, of.core.Food)
			}
			known = known || is.known > 0 && !ours(of.by, c)
			continue
		}
		known = true
		bare := unturned(of, c, was, is, sugars[path])
		turned += math.Abs(is.known - bare)
		told[of.core.Food] += bare
	}
	v.Own = ownShare(here, t.lines)
	for _, f := range v.Lacks { // of two lines one is not told
		delete(told, f)
	}
	slices.SortFunc(v.Lacks, func(a, b *food.Food) int { return compareIDs(a.ID, b.ID) })
	switch {
	case taken == 0:
		v.Standing = AsCore
	case lacked <= within*total && turned > within*max(total, v.Mean):
		v.Standing = Turned
	case lacked <= within*total:
		v.Standing = Told
	case known:
		v.Standing = Partly
	default:
		v.Standing = Absent
	}
	return v, told
}

// unturned is what a row would bring if steps made of its sugars what they make of those of the core food
// in its place. The two are one but where sugar splits by the pH, or by what else is in the pot: white sugar
// that splits more in a sourer syrup is no other sugar. Sugars is what the core food brings of all.
func unturned(of lineOf, c *constituent.Constituent, was, is, sugars brought) float64 {
	core, by, all := of.core.Cell(c.ID), of.by.Cell(c.ID), of.core.Cell(constituent.Sugar)
	if c.Parent != constituent.Sugar || !core.Known || !by.Known || !all.Known || all.Amount <= 0 {
		return is.known
	}
	within := unit.LimitOf("what a table may leave open", "share").High * sugars.known
	switch laid := core.Amount / all.Amount * sugars.known; {
	case math.Abs(was.known-laid) <= within:
		return is.known
	case was.known > laid: // it was made
		return was.known
	}
	return was.known * by.Amount / core.Amount
}

// ownShare is how much of a figure rows that are taken bring.
func ownShare(here map[string]brought, taken map[string]lineOf) float64 {
	own, all := 0.0, 0.0
	for _, path := range slices.Sorted(maps.Keys(here)) {
		if all += here[path].known; taken[path].by != nil {
			own += here[path].known
		}
	}
	return own / all
}

// lacks reports whether a row does not know of a constituent what the core food in its place brings.
func lacks(by *food.Profile, c *constituent.Constituent, was, is brought, within float64) bool {
	switch {
	case ours(by, c), is.known <= 0 && !states(by, c): // nothing that follows from its other figures
		return true
	case !is.unknown:
		return false
	case is.known <= 0:
		return true
	}
	return !was.unknown && !(is.open <= within*was.known)
}

// ours reports whether what is known of a constituent of a table's row is not the table's: a kin shares
// it out, or a rule takes it as zero.
func ours(p *food.Profile, c *constituent.Constituent) bool {
	if c.Kind == constituent.Figure {
		return false
	}
	cell := p.Cell(c.ID)
	return !states(p, c) && cell.Known && (cell.By == food.ByKin || cell.State == estimate.Assumed)
}

// states reports whether a table prints a figure of a row.
func states(p *food.Profile, c *constituent.Constituent) bool {
	v, ok := p.Food.Value(c.ID)
	return ok && v.State != estimate.Unknown
}

// furthest finds the food in which two tables or more lie furthest apart.
func (a *Across) furthest(f Figure, byFood []map[*food.Food]float64) *Disagreement {
	var most *Disagreement
	for _, of := range a.foods() {
		d := Disagreement{Food: of, Constituent: f.Constituent, Low: math.Inf(1), High: math.Inf(-1)}
		voices := 0
		for i, told := range byFood {
			x, ok := told[of]
			if !ok {
				continue
			}
			voices++
			if x < d.Low {
				d.Low, d.LowBy = x, a.Tables[i].ID
			}
			if x > d.High {
				d.High, d.HighBy = x, a.Tables[i].ID
			}
		}
		if voices < 2 || d.High-d.Low <= unit.Closeness*d.High {
			continue
		}
		d.Share = (d.High - d.Low) / f.Core.Mean
		if most == nil || d.High-d.Low > most.High-most.Low {
			most = &d
		}
	}
	return most
}

// foods lists the core foods that any table has, in the order of the drink.
func (a *Across) foods() []*food.Food {
	var list []*food.Food
	for _, t := range a.Tables {
		for _, x := range t.Taken {
			if !slices.Contains(list, x.Core) {
				list = append(list, x.Core)
			}
		}
	}
	return list
}

// most is the food on which the tables disagree most, by its share of a figure that a barista would
// speak of, or of what that is a part of: a few milligrams of a minor acid are nothing beside the others.
func (a *Across) most() *Disagreement {
	var most *Disagreement
	weight := 0.0
	for _, f := range a.Figures {
		d := f.Most
		if d == nil || f.Core.Unknown || math.IsNaN(d.Share) || math.IsInf(d.Share, 0) || f.Constituent.Kind == constituent.Figure || a.Marked(f) || !ladder.Worth(f.Constituent, f.Core.Mean, a.Core.Volume.Mean) {
			continue
		}
		if w := (d.High - d.Low) / a.whole(f); w > weight {
			most, weight = d, w
		}
	}
	return most
}

// whole is what a figure is a part of, as far as it is compared too, in the unit of the figure; else itself.
func (a *Across) whole(f Figure) float64 {
	whole := f.Core.Mean
	for _, of := range a.Figures {
		if of.Constituent.ID == f.Constituent.Parent && of.Constituent.ID != constituent.Mass && of.Constituent.PerGram > 0 && !of.Core.Unknown {
			whole = max(whole, of.Core.Mean*f.Constituent.PerGram/of.Constituent.PerGram)
		}
	}
	return whole
}
