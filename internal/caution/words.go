package caution

import (
	"strings"
	"sync"
	"unicode"

	"golang.org/x/text/runes"
	"golang.org/x/text/transform"
	"golang.org/x/text/unicode/norm"

	"sipsum/internal/embedded"
	"sipsum/internal/phrase"
)

// list is words, in several languages, for one thing.
type list struct {
	words  phrase.List
	ignore phrase.List // taken out of a name first
	not    phrase.List // in whose company nothing is found
}

// lists are the word lists of both tables, by their names.
var lists = sync.OnceValue(func() map[string]*list {
	all := map[string]*list{}
	for _, table := range []string{"hazard_foods.csv", "techniques.csv"} {
		for _, row := range embedded.Rows(table) {
			l := all[row.Text("list")]
			if l == nil {
				l = &list{}
				all[row.Text("list")] = l
			}
			l.words = append(l.words, phrase.Read(fold(row.Text("words")))...)
			l.ignore = append(l.ignore, phrase.Read(fold(row.Text("ignore")))...)
			l.not = append(l.not, phrase.Read(fold(row.Text("not")))...)
		}
	}
	return all
})

// in reports whether the words of a name hold what the list means.
func (l *list) in(words []string) bool {
	return !l.not.In(words) && l.words.In(l.ignore.Without(words))
}

// fold writes a text in small letters without accents, as hands leave them out.
func fold(text string) string {
	bare, _, err := transform.String(transform.Chain(norm.NFD, runes.Remove(runes.In(unicode.Mn)), norm.NFC), strings.ToLower(text))
	if err != nil {
		return strings.ToLower(text)
	}
	return bare
}

// wordsOf cuts a name as the lists are cut.
func wordsOf(name string) []string { return phrase.Words(fold(name)) }
