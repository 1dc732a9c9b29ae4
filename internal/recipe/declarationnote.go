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
	"sipsum/internal/unit"
)

// noteDeclared is the kind of what is said of a pack and how it was read.
const noteDeclared = "declared"

// notes tell how the pack was read: what carbohydrate means, how far its figures may be off, and
// whether its energy fits the rest.
func (d *declaration) notes(meant []meaning) []food.Note {
	var list []food.Note
	for _, m := range meant {
		if text, ok := carbohydrateIs[m.of.ID]; ok && (m.word || d.food.Declared != "") { // a tagname alone leaves nothing to be read
			by := "as its rules " + d.rules.Name + " have it (" + d.because + ")"
			if !m.word {
				by = "as " + m.Tag + " says"
			}
			list = append(list, food.Note{Kind: noteDeclared, Constituent: m.of.ID, Text: "carbohydrate is read as " + text + ", " + by})
		}
	}
	if text := d.accepted(); text != "" {
		list = append(list, food.Note{Kind: noteDeclared, Text: text})
	}
	return append(list, d.energyNotes(meant)...)
}

// carbohydrateIs says in words what a carbohydrate is.
var carbohydrateIs = map[constituent.ID]string{
	constituent.Available:    "available carbohydrate, without fibre",
	constituent.Carbohydrate: "total carbohydrate by difference, fibre included",
}

// accepted says what the rules accept of the figures, and which keep the spread of their class.
func (d *declaration) accepted() string {
	var limited, open, sources []string
	for _, a := range d.read {
		name := a.row.Word
		switch {
		case math.IsInf(a.least, -1) && math.IsInf(a.most, 1):
			open = append(open, name)
			continue
		case math.IsInf(a.most, 1):
			name += " at least " + note.Number(a.least)
		case math.IsInf(a.least, -1):
			name += " at most " + note.Number(a.most)
		default:
			name += " " + note.Number(a.least) + " to " + note.Number(a.most)
		}
		limited = append(limited, name+" "+a.row.Unit)
		if !slices.Contains(sources, a.source) {
			sources = append(sources, a.source)
		}
	}
	if len(limited) == 0 {
		return ""
	}
	base := "100 g"
	if d.food.Per.Measure.Kind == unit.Volume {
		base = "100 ml"
	}
	inside, _ := pack.Inside()
	text := fmt.Sprintf("%s accepts around what it declares, in %s: %s (%s); %.0f %% of packs keep within such limits, and its spread is taken from that", d.rules.Name, base, strings.Join(limited, ", "), strings.Join(sources, "; "), inside*unit.Hundred)
	if len(open) > 0 {
		text += "; of " + strings.Join(open, ", ") + " nothing is said there, and the spread is that of such foods"
	}
	return text
}

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
		if !ok || m.State != "" || m.row == nil {
			continue
		}
		made, whole := d.energyOf(stated, m.of.Unit)
		rounding := math.Pow10(-m.Decimals) / 2
		if m.Unit == m.row.Unit || m.word {
			rounding = d.rules.Rounding(*m.row, m.Number, m.Decimals)
		}
		slack := pack.OtherFactors() * m.Number
		declared := fmt.Sprintf("its energy is declared as %s %s and its other figures make %s to %s", note.Grams(m.Number), m.Unit, note.Number(made.low), note.Number(made.high))
		switch {
		case whole && m.Number-rounding-slack > made.high:
			list = append(list, food.Note{Kind: noteDeclared, Constituent: id, Text: declared + ": what it does not state, such as fibre, acids, polyols or alcohol, makes the rest, or a figure is wrong"})
		case !whole && m.Number+rounding+slack < made.low: // whatever the rest is
			list = append(list, food.Note{Kind: noteDeclared, Constituent: id, Text: fmt.Sprintf("its energy is declared as %s %s and the figures beside it already make %s: check the figures and per:", note.Grams(m.Number), m.Unit, note.Number(made.low))})
		case m.Number+rounding+slack < made.low:
			list = append(list, food.Note{Kind: noteDeclared, Constituent: id, Text: declared + ": check the figures and per:"})
		}
	}
	return list
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
		rounding := math.Pow10(-m.Decimals) / 2
		if m.row != nil && m.Unit == m.row.Unit && m.times == 1 {
			rounding = d.rules.Rounding(*m.row, m.Number, m.Decimals)
		}
		return span{max(m.Number-rounding, 0) * perGram, (m.Number + rounding) * perGram}, true
	}
	found := map[constituent.ID]bool{}
	for _, f := range d.rules.Factors {
		x, known := grams(f.Of)
		factor, has := f.PerGram[in]
		if !known || !has {
			continue
		}
		found[f.Of] = true
		net := factor - d.wholeFactor(stated, f.Of, in) // a part of what has a factor counts by its own
		ends := [2]float64{net * x.low, net * x.high}
		sum.low, sum.high = sum.low+min(ends[0], ends[1]), sum.high+max(ends[0], ends[1])
	}
	carbohydrate := found[constituent.Available] || found[constituent.Carbohydrate]
	return sum, carbohydrate && found[constituent.Fat] && found[constituent.Protein]
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
