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
	name   string
	words  phrase.List
	ignore phrase.List // taken out of a name first
	not    phrase.List // in whose company nothing is found
}

// book is the lists of both tables. A name is asked for the few lists of which it has a
// first word: to ask all of them of each name would take longer than the drink does.
type book struct {
	lists map[string]*list
	first map[string][]*list // by the first word of their phrases
	open  map[string][]*list // the same of words that end with a star
}

var lists = sync.OnceValue(func() *book {
	b := &book{map[string]*list{}, map[string][]*list{}, map[string][]*list{}}
	for _, table := range []string{"hazard_foods.csv", "techniques.csv"} {
		for _, row := range embedded.Rows(table) {
			l := b.lists[row.Text("list")]
			if l == nil {
				l = &list{name: row.Text("list")}
				b.lists[l.name] = l
			}
			words := fold(row.Text("words"))
			l.words = append(l.words, phrase.Read(words)...)
			l.ignore = append(l.ignore, phrase.Read(fold(row.Text("ignore")))...)
			l.not = append(l.not, phrase.Read(fold(row.Text("not")))...)
			for _, p := range parted(words) {
				b.enter(l, p)
			}
		}
	}
	return b
})

func (b *book) enter(l *list, p string) {
	word, _, _ := strings.Cut(strings.TrimPrefix(p, "^"), " ")
	if begin, open := strings.CutSuffix(word, "*"); open {
		b.open[begin] = append(b.open[begin], l)
		return
	}
	b.first[word] = append(b.first[word], l)
}

// in gives the lists that a name holds words of, by their names.
func (b *book) in(name string) map[string]bool {
	words := phrase.Words(fold(name))
	asked, found := map[*list]bool{}, map[string]bool{}
	ask := func(lists []*list) {
		for _, l := range lists {
			if !asked[l] {
				asked[l] = true
				found[l.name] = !l.not.In(words) && l.words.In(l.ignore.Without(words))
			}
		}
	}
	for _, w := range words {
		for _, form := range []string{w, strings.TrimSuffix(w, "s"), strings.TrimSuffix(w, "es")} { // as phrases take plurals
			ask(b.first[form])
		}
		for begin, lists := range b.open {
			if strings.HasPrefix(w, begin) {
				ask(lists)
			}
		}
	}
	return found
}

// fold writes a text in small letters without accents, as hands leave them out.
func fold(text string) string {
	text = strings.ToLower(text)
	if strings.IndexFunc(text, func(c rune) bool { return c > unicode.MaxASCII }) < 0 {
		return text
	}
	bare, _, err := transform.String(transform.Chain(norm.NFD, runes.Remove(runes.In(unicode.Mn)), norm.NFC), text)
	if err != nil {
		return text
	}
	return bare
}
