package store

import (
	"cmp"
	"context"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/jmoiron/sqlx"

	"sipsum/internal/spelling"
)

// The words that may stand for one: of equally near ones those that most names have.
const (
	mostCorrections = 8
	mostCompounds   = 64 // which are all meant
)

// mostBeginnings is how many words the index is told of in the place of their beginning; of hundreds it
// would compare each with each name.
const mostBeginnings = 64

// The fewest letters of a part of a compound, and of a beginning with a slip: what is shorter is in words of all
// kinds. Scripts that set no spaces have whole words of two.
const (
	shortestPart      = 4
	shortestUnspaced  = 2
	shortestBeginning = 5
)

// wordList is the words of a release that have as many letters, as migration 0004 says.
type wordList struct {
	Letters int
	Words   string
}

type wordLists []wordList

// knownWords reads the words of the tables, of all that are loaded if none is given.
func knownWords(ctx context.Context, tx *sqlx.Tx, tables []string) (known wordLists, err error) {
	scope := Ranking{Tables: tables}.scope()
	return known, tx.SelectContext(ctx, &known,
		"SELECT v.letters, v.words FROM release r CROSS JOIN vocabulary v ON v.release = r.key WHERE "+scope.text, scope.args...)
}

// correct gives an FTS5 expression for each word: its beginnings if there are any, else the nearest words of the
// tables. Words without either are left out.
func (known wordLists) correct(words []string) (expressions []string) {
	for _, word := range tokens(strings.Join(words, " ")) {
		if isNumber(word) || known.begin(word) {
			expressions = append(expressions, known.startOf(word))
		} else if nearest := known.nearest(word); len(nearest) > 0 {
			expressions = append(expressions, anyOf(nearest))
		}
	}
	return expressions
}

// begin tells whether a word begins so.
func (known wordLists) begin(word string) bool {
	letters := utf8.RuneCountInString(word)
	return slices.ContainsFunc(known, func(l wordList) bool { return l.Letters >= letters && strings.Contains(l.Words, "\n"+word) })
}

// startOf is the FTS5 expression for names with a word that begins so. The index answers sooner if it is told
// which words these are: of a beginning it first puts together every name that has one.
func (known wordLists) startOf(text string) string {
	beginning := quoted(text) + "*"
	words := tokens(text)
	if len(words) != 1 || isNumber(words[0]) {
		return beginning
	}
	near, letters := nearWords{}, utf8.RuneCountInString(words[0])
	for _, l := range known {
		if l.Letters < letters {
			continue
		}
		for rest := l.Words; ; {
			at := strings.Index(rest, "\n"+words[0])
			if at < 0 {
				break
			}
			word, names, end := lineAt(rest, at+1)
			near[word] += names
			rest = rest[end:]
		}
		if len(near) > mostBeginnings {
			return beginning
		}
	}
	if len(near) == 0 {
		return beginning
	}
	return anyOf(near.best(mostBeginnings))
}

func anyOf(expressions []string) string { return "(" + strings.Join(expressions, " OR ") + ")" }

// nearest gives the words that are nearest to one that nobody has: those that it is a part of, as "saft" is of
// "zitronensaft"; else those that are the fewest slips away; else those whose beginning is.
func (known wordLists) nearest(word string) []string {
	if near := known.with(word); len(near) > 0 {
		return near.best(mostCompounds)
	}
	most := spelling.Allowed(word)
	written, letters := spelling.WordOf(word), utf8.RuneCountInString(word)
	near := known.within(most, letters-most, letters+most, written.Slips)
	if len(near) == 0 && letters >= shortestBeginning {
		near = known.within(1, letters, letters*2, written.SlipsToBeginning)
	}
	return near.best(mostCorrections)
}

// nearWords counts the names of words that are equally near.
type nearWords map[string]int

// with finds the words that a word is a part of.
func (known wordLists) with(part string) nearWords {
	letters, near := utf8.RuneCountInString(part), nearWords{}
	if letters < shortestPart && !(letters >= shortestUnspaced && isUnspaced(part)) {
		return nil
	}
	for _, l := range known {
		if l.Letters <= letters {
			continue
		}
		for rest := l.Words; ; {
			at := strings.Index(rest, part)
			if at < 0 {
				break
			}
			word, names, end := lineAt(rest, at)
			near[word] += names
			rest = rest[end:]
		}
	}
	return near
}

// isUnspaced tells whether a word is of a script that sets no spaces between words.
func isUnspaced(word string) bool {
	return strings.ContainsFunc(word, func(r rune) bool { return unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana, unicode.Thai) })
}

// within finds the words of from … to letters that are the fewest slips away, at most so many.
func (known wordLists) within(most, from, to int, slips func(word string, most int) int) nearWords {
	near := nearWords{}
	for _, l := range known {
		if l.Letters < from || l.Letters > to {
			continue
		}
		for rest := l.Words; len(rest) > 1; {
			word, names, end := lineAt(rest, 1)
			rest = rest[end:]
			n := slips(word, most)
			if n > most {
				continue
			}
			if n < most {
				most = n
				clear(near)
			}
			near[word] += names
		}
	}
	return near
}

// lineAt reads the line of a list in which a byte stands, and where it ends.
func lineAt(words string, at int) (word string, names, end int) {
	from := strings.LastIndexByte(words[:at], '\n') + 1
	word, count, _ := strings.Cut(words[from:from+strings.IndexByte(words[from:], '\n')], " ")
	names, _ = strconv.Atoi(count) // 0 of what is not a count: the word comes last
	return word, names, from + len(word) + 1 + len(count)
}

// best gives the words that most names have, quoted for the index.
func (near nearWords) best(most int) []string {
	words := make([]string, 0, len(near))
	for word := range near {
		words = append(words, word)
	}
	slices.SortFunc(words, func(a, b string) int { return cmp.Or(cmp.Compare(near[b], near[a]), cmp.Compare(a, b)) })
	words = words[:min(most, len(words))]
	for i, word := range words {
		words[i] = quoted(word)
	}
	return words
}
