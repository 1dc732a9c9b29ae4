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
			by := "as the rules " + strings.ToUpper(d.rules.Name) + " have it (" + d.because + ")"
			if !m.word {
				by = "as " + m.Tag + " says"
			}
			list = append(list, food.Note{Kind: noteDeclared, Constituent: m.of.ID, Text: "carbohydrate is read as " + text + ", " + by})
		}
	}
	if text := d.accepted(); text != "" {
		list = append(list, food.Note{Kind: noteDeclared, Text: text})
	}
	if len(d.zeros) > 0 {
		list = append(list, food.Note{Kind: noteDeclared, Text: fmt.Sprintf("a 0 on the pack is not none: it is less than what the rules %s let be printed as 0, or than half of its last digit. In %s it counts as %s; write 0 g ± 0 g if there is none", strings.ToUpper(d.rules.Name), inBase(d.food), strings.Join(d.zeros, ", "))})
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
	text := fmt.Sprintf("%s accepts around what the pack says, in %s: %s (%s); %.0f %% of packs keep within such limits, and that is how far these figures may be off", strings.ToUpper(d.rules.Name), base, strings.Join(limited, ", "), strings.Join(sources, "; "), inside*unit.Hundred)
	if len(open) > 0 {
		text += "; of " + strings.Join(open, ", ") + " nothing is said there, and they may be off as such foods are"
	}
	return text
}

// inBase is what the figures of an own food refer to: "50 ml".
func inBase(o *drink.OwnFood) string {
	base := note.Grams(o.Per.Base())
	if o.Per.Measure.Kind == unit.Volume {
		return base + " ml"
	}
	return base + " g"
}
