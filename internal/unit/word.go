package unit

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/embedded"
)

// meaning is the unit that a word stands for, and how many of it.
type meaning struct {
	unit   string
	factor float64
}

// wordOf is a word of data/unit_words.csv and its unit.
type wordOf struct{ text, unit string }

// listed is the words in the order of the table: the grammar of a drink file asks for them at each of its figures.
var listed = sync.OnceValue(func() []wordOf {
	var list []wordOf
	for _, row := range embedded.Rows("unit_words.csv") {
		list = append(list, wordOf{row.Text("word"), row.Text("unit")})
	}
	return list
})

// words are the other ways to write a unit (data/unit_words.csv), squeezed; a word may stand for
// the units of different scales.
var words = sync.OnceValue(func() map[string][]meaning {
	all := map[string][]meaning{}
	for _, row := range embedded.Rows("unit_words.csv") {
		word := row.Text("word")
		if squeeze(word) != word {
			row.Fail("%q is written %q when it is compared", word, squeeze(word))
		}
		all[word] = append(all[word], meaning{row.Text("unit"), row.Number("factor")})
	}
	return all
})

// unitSigns turns signs that look the same into the one that units use: the
// Greek mu and the ordinal that keyboards put for a degree.
var unitSigns = strings.NewReplacer("μg", "µg", "º", "°")

// spelledOut shortens units that are written out; made once, for a replacer is built when it is first used.
var spelledOut = strings.NewReplacer("degrees", "deg", "degree", "deg", "°c", "c", "°f", "f", "percent", "%", "per", "/")

// squeeze makes words comparable: small letters, without spaces and the full stop of an
// abbreviation, degrees as deg, per as a stroke.
func squeeze(word string) string {
	word = strings.ToLower(strings.Join(strings.Fields(unitSigns.Replace(word)), ""))
	word = spelledOut.Replace(word)
	return strings.TrimSuffix(word, ".")
}

// find gives the unit of a list that a word stands for, in any usual case and form, and how many
// of it one such is.
func find(word string, units []string) (meaning, bool) {
	for _, u := range units {
		if u == word {
			return meaning{u, 1}, true
		}
	}
	plain := squeeze(word)
	if plain == "" {
		return meaning{}, false
	}
	for _, u := range units {
		if squeeze(u) == plain {
			return meaning{u, 1}, true
		}
	}
	singular := strings.TrimSuffix(plain, "s")
	for _, form := range []string{plain, singular} {
		for _, m := range words()[form] {
			for _, u := range units {
				if u == m.unit {
					return m, true
				}
			}
		}
	}
	for _, u := range units { // "grams" is in the list of words as gram, "mls" nowhere
		if len(singular) > 1 && squeeze(u) == singular {
			return meaning{u, 1}, true
		}
	}
	return meaning{}, false
}

// Forms gives the words that are read for some units, in the order of the table; an s at their
// end, capitals and spaces are read besides.
func Forms(units []string) []string {
	forms := slices.Clone(units)
	for _, w := range listed() {
		if slices.Contains(units, w.unit) || w.unit == fahrenheit && slices.Contains(units, "°C") {
			forms = append(forms, w.text)
		}
	}
	if slices.Contains(units, "°C") {
		forms = append(forms, fahrenheit)
	}
	return forms
}
