package unit

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/embedded"
)

// OnePiece is the word of a count that names no portion: two lemons.
const OnePiece = "piece"

// portionWords are the words by which foods are counted, each with the words that begin such a
// portion in a table (data/portion_words.csv).
var portionWords = sync.OnceValue(func() map[string][]string {
	all := map[string][]string{}
	for _, row := range embedded.Rows("portion_words.csv") {
		all[row.Text("word")] = append([]string{row.Text("portion")}, strings.Fields(row.Text("also"))...)
	}
	return all
})

// PortionWord gives the word of the list that a word is, one or more of them.
func PortionWord(word string) (string, bool) {
	word = singular(word)
	_, ok := portionWords()[word]
	return word, ok
}

// IsPortion tells whether a portion, as a table calls it, is what a word of the list counts:
// "leaves" of "leaf", `fruit (2-1/8" dia)` of "piece".
func IsPortion(portion, word string) bool {
	first, _, _ := strings.Cut(portion, " ")
	return slices.Contains(portionWords()[word], singular(strings.TrimRight(first, ",")))
}

// singular gives one of many, as far as the words of the list go.
func singular(word string) string {
	word = strings.ToLower(word)
	switch {
	case word == "leaves":
		return "leaf"
	case strings.HasSuffix(word, "ies"):
		return strings.TrimSuffix(word, "ies") + "y"
	}
	return strings.TrimSuffix(word, "s")
}

// ParseCount reads the number that a text begins with and gives what follows.
func ParseCount(text string) (count float64, rest string, ok bool) {
	digits, rest := cutNumber(strings.TrimLeft(text, " "))
	n, _, err := ParseNumber(digits)
	return n, strings.TrimLeft(rest, " "), digits != "" && err == nil
}

// Packing is the relative standard deviation of what a spoon or cup of a food weighs beside what
// a table says of it: it may be heaped or sifted (data/constants.csv).
var Packing = sync.OnceValue(func() float64 {
	for _, row := range embedded.Rows("constants.csv") {
		if row.Text("constant") == "packing of a dry measure" {
			return row.Number("value")
		}
	}
	panic("unit: constants.csv lacks the packing of a dry measure")
})

// isCount tells a text that begins with a number and a word of the list.
func isCount(text string) bool {
	_, rest, ok := ParseCount(text)
	first, food, _ := strings.Cut(rest, " ")
	_, word := PortionWord(first)
	return ok && word && food != ""
}
