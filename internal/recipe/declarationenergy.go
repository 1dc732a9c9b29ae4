package recipe

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/pack"
)

// span is a figure by its rounding, in grams or as energy.
type span struct{ low, high float64 }

// energyNotes say where a declared energy does not fit the declared figures, both figures given.
// What a pack need not state (fibre, acids, alcohol, polyols) may make it more, and what rules
// allow in place of their general factors may change it.
func (d *declaration) energyNotes(meant []meaning) []food.Note {
	stated := map[constituent.ID]meaning{}
	for _, m := range meant {
		stated[m.of.ID] = m
	}
	var list []food.Note
	for _, id := range []constituent.ID{constituent.Energy, constituent.EnergyKcal} {
		m, ok := stated[id]
		if !ok || m.row == nil || m.State == drink.Unknown || m.State == drink.Trace {
			continue
		}
		made, whole := d.energyOf(stated, m.of.Unit)
		around, figure := d.declaredEnergy(m)
		if !whole {
			if around.high < made.low { // whatever the rest is
				list = append(list, food.Note{Kind: noteDeclared, Constituent: id, Text: fmt.Sprintf("its energy is declared as %s and the figures beside it already make %s: check the figures and per:", figure, note.Number(made.low))})
			}
			continue
		}
		text := fmt.Sprintf("its energy is declared as %s and its other figures make %s to %s: ", figure, note.Number(made.low), note.Number(made.high))
		switch other := d.inOtherUnit(m, stated); {
		case around.low <= made.high && around.high >= made.low:
			continue
		case other != "":
			text += "the number fits as " + other + ", so that its unit looks like a slip: write " + m.Tag + ": " + other
		case around.low > made.high && len(d.mayBeMore(stated, m.of.Unit)) > 0:
			text += "what it does not state (" + strings.Join(d.mayBeMore(stated, m.of.Unit), ", ") + ") makes the rest, or a figure is wrong"
		default:
			text += "check the figures and per:"
		}
		list = append(list, food.Note{Kind: noteDeclared, Constituent: id, Text: text})
	}
	return list
}

// declaredEnergy gives what an energy may be by its rounding and by other factors than the general
// ones, and how it stands in the file.
func (d *declaration) declaredEnergy(m meaning) (around span, figure string) {
	if m.State == drink.Below {
		return span{0, m.Limit * (1 + pack.OtherFactors())}, "less than " + note.Grams(m.Limit) + " " + m.Unit
	}
	rounding := math.Pow10(-m.Decimals) / 2
	if m.Unit == m.row.Unit || m.word {
		rounding = d.rules.Rounding(*m.row, m.Number, m.Decimals)
	}
	off := rounding + pack.OtherFactors()*m.Number
	return span{m.Number - off, m.Number + off}, note.Grams(m.Number) + " " + m.Unit
}

// inOtherUnit gives the energy in the other unit, if the number fits the other figures in that: kcal
// that were written as kJ, or the other way about.
func (d *declaration) inOtherUnit(m meaning, stated map[constituent.ID]meaning) string {
	other := constituent.Must(constituent.EnergyKcal).Unit
	if m.of.Unit == other {
		other = constituent.Must(constituent.Energy).Unit
	}
	made, ok := d.energyOf(stated, other)
	around, _ := d.declaredEnergy(m)
	if !ok || m.State != "" || around.low > made.high || around.high < made.low {
		return ""
	}
	return note.Grams(m.Number) + " " + other
}

// mayBeMore names what has an energy by the rules and is neither stated nor in what is: the polyols
// of an eu carbohydrate and the fibre of a us one are.
func (d *declaration) mayBeMore(stated map[constituent.ID]meaning, in string) []string {
	within := map[constituent.ID]bool{}
	for id, m := range stated {
		if within[id] = m.State != drink.Unknown; m.word && m.State == "" {
			for _, also := range m.row.Also {
				within[also] = true
			}
		}
	}
	var named []constituent.ID
	var names []string
	for _, f := range d.rules.Factors {
		c := constituent.Must(f.Of)
		inside := f.PerGram[in] == 0 || c.Kind == constituent.Rest
		for up := c; up != nil && !inside; up, _ = constituent.Find(string(up.Parent)) {
			inside = within[up.ID] || slices.Contains(named, up.ID)
		}
		if !inside {
			name := c.Name
			if len(d.statedParts(stated, c.ID)) > 0 {
				name = "other " + name
			}
			named, names = append(named, c.ID), append(names, name)
		}
	}
	return names
}

// energyOf adds up the energy of what is stated, in a unit, on the basis of the pack; whole is
// false without fat, protein and a carbohydrate: then there is more, and its high end says nothing.
func (d *declaration) energyOf(stated map[constituent.ID]meaning, in string) (sum span, whole bool) {
	grams := func(id constituent.ID) (span, bool) {
		m, ok := stated[id]
		if !ok || m.State == drink.Unknown || m.State == drink.Trace {
			return span{}, false
		}
		perGram := m.factor / d.per100g / m.of.PerGram
		if m.State == drink.Below {
			return span{0, m.Limit * perGram}, true
		}
		if m.Number == 0 || m.Exact { // none, and not a 0 that was rounded
			return span{m.Number * perGram, m.Number * perGram}, true
		}
		rounding := math.Pow10(-m.Decimals) / 2
		if m.row != nil && m.Unit == m.row.Unit && m.times == 1 {
			rounding = d.rules.Rounding(*m.row, m.Number, m.Decimals)
		}
		return span{max(m.Number-rounding, 0) * perGram, (m.Number + rounding) * perGram}, true
	}
	found := map[constituent.ID]bool{}
	for _, f := range d.rules.Factors {
		factor, has := f.PerGram[in]
		if !has {
			continue
		}
		x, known := grams(f.Of)
		if found[f.Of] = known; !known {
			for _, part := range d.statedParts(stated, f.Of) { // a stated acid has the energy of the acids
				of, _ := grams(part)
				x.low, x.high = x.low+of.low, x.high+of.high
			}
		}
		net := factor - d.wholeFactor(stated, f.Of, in) // a part of what has a factor counts by its own
		ends := [2]float64{net * x.low, net * x.high}
		sum.low, sum.high = sum.low+min(ends[0], ends[1]), sum.high+max(ends[0], ends[1])
	}
	carbohydrate := found[constituent.Available] || found[constituent.Carbohydrate]
	return sum, carbohydrate && found[constituent.Fat] && found[constituent.Protein]
}

// statedParts are the topmost stated parts of a total that nobody states, but for those that have
// a factor of their own.
func (d *declaration) statedParts(stated map[constituent.ID]meaning, total constituent.ID) (parts []constituent.ID) {
	for _, part := range constituent.Sums().Children(total) {
		if slices.ContainsFunc(d.rules.Factors, func(f constituent.EnergyFactor) bool { return f.Of == part.ID }) {
			continue
		}
		if _, ok := stated[part.ID]; ok {
			parts = append(parts, part.ID)
			continue
		}
		parts = append(parts, d.statedParts(stated, part.ID)...)
	}
	return parts
}

// wholeFactor gives the factor of the nearest stated whole of a constituent; 0 if none is stated.
func (d *declaration) wholeFactor(stated map[constituent.ID]meaning, id constituent.ID, in string) float64 {
	for up := constituent.Must(id).Parent; up != ""; up = constituent.Must(up).Parent {
		if _, ok := stated[up]; !ok {
			continue
		}
		for _, f := range d.rules.Factors {
			if f.Of == up {
				return f.PerGram[in]
			}
		}
	}
	return 0
}
