package speech

import (
	"regexp"
	"slices"
	"strings"
	"sync"
	"unicode"

	"sipsum/internal/embedded"
	"sipsum/internal/phrase"
)

// withheld is a row of data/speech_withheld.csv: words that no check of a figure decides.
type withheld struct {
	words  phrase.List
	ends   []string    // of longer words: "sugarless", "zuckerfrei"
	ignore phrase.List // taken out of a sentence first
	why    string
}

var allWithheld = sync.OnceValue(func() []withheld {
	var list []withheld
	for _, row := range embedded.Rows("speech_withheld.csv") {
		w := withheld{words: phrase.Read(row.Text("words")), ignore: phrase.Read(row.Text("ignore")), why: row.Text("why")}
		if ends := row.Text("ends"); ends != "" {
			w.ends = strings.Split(ends, "|")
		}
		list = append(list, w)
	}
	return list
})

// nought is a figure of nothing: "0 % fat", "0.0".
var nought = regexp.MustCompile(`(^|[^\d.,])0+([.,]0+)?([^\d.,]|[.,]?$|[.,]\D)`)

// Withheld says why a sentence in somebody's own words is not spoken, whatever was checked: it
// denies that something is in a drink, speaks of health, or of whom it suits. Empty: it is none.
func Withheld(text string) string {
	words := phrase.Words(text)
	for _, w := range allWithheld() {
		left := w.ignore.Without(words)
		if w.words.In(left) || slices.ContainsFunc(left, w.endsSo) {
			return w.why
		}
	}
	if nought.MatchString(text) {
		return allWithheld()[0].why
	}
	return ""
}

// endsSo reports whether a longer word ends as one of the row's.
func (w withheld) endsSo(word string) bool {
	return slices.ContainsFunc(w.ends, func(end string) bool { return len(word) > len(end) && strings.HasSuffix(word, end) })
}

var numbers = sync.OnceValue(func() []phrase.List {
	var list []phrase.List
	for _, row := range embedded.Rows("speech_numbers.csv") {
		list = append(list, phrase.Read(row.Text("words")))
	}
	return list
})

// SpeaksNumber reports whether a sentence holds a number, in digits or in words.
func SpeaksNumber(text string) bool {
	words := phrase.Words(text)
	return strings.ContainsFunc(text, unicode.IsDigit) || slices.ContainsFunc(numbers(), func(l phrase.List) bool { return l.In(words) })
}
