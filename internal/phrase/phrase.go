package phrase

import (
	"strings"
	"unicode"
)

// one is words that follow each other in a name.
type one struct {
	words []word
	start bool // only at the start of the name
}

// word is a word of a rule; one with a star at its end is open.
type word struct {
	text string
	open bool
}

// List is phrases of which any may stand in a name.
type List []one

// Read reads "milk|^milk goat": alternatives parted by bars, words by spaces.
func Read(text string) List {
	if text == "" {
		return nil
	}
	all := make(List, 0, strings.Count(text, "|")+1)
	for part := range strings.SplitSeq(text, "|") {
		rest, start := strings.CutPrefix(part, "^")
		p := one{start: start}
		for w := range strings.FieldsSeq(rest) {
			text, open := strings.CutSuffix(w, "*")
			p.words = append(p.words, word{text, open})
		}
		all = append(all, p)
	}
	return all
}

// apostrophes are left out of words; made once, for a replacer is built when it is first used.
var apostrophes = strings.NewReplacer("'", "", "’", "")

// Words cuts a name into lower-case words: runs of letters and digits, an
// apostrophe inside a word left out.
func Words(name string) []string {
	name = apostrophes.Replace(strings.ToLower(name))
	return strings.FieldsFunc(name, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// is compares a word of a name with a word of a rule, a plural aside. A star at the
// end of the rule's word stands for any letters.
func (want word) is(have string) bool {
	rest, ok := strings.CutPrefix(have, want.text)
	return ok && (want.open || rest == "" || rest == "s" || rest == "es")
}

// at reports whether the phrase stands at position i of the words.
func (p one) at(words []string, i int) bool {
	if p.start && i > 0 || i+len(p.words) > len(words) {
		return false
	}
	for k, want := range p.words {
		if !want.is(words[i+k]) {
			return false
		}
	}
	return true
}

// In reports whether one of the phrases stands in the words.
func (l List) In(words []string) bool {
	for _, p := range l {
		for i, w := range words {
			if p.begins(w) && p.at(words, i) {
				return true
			}
		}
	}
	return false
}

// begins reports whether a phrase may stand where a word does, by its first letter: most do not.
func (p one) begins(have string) bool {
	if len(p.words) == 0 || p.words[0].text == "" {
		return true
	}
	return have != "" && have[0] == p.words[0].text[0]
}

// Without takes every occurrence of the phrases out of the words. What remains
// keeps its place, so that words which were apart do not become neighbours.
func (l List) Without(words []string) []string {
	if len(l) == 0 {
		return words
	}
	left := append([]string(nil), words...)
	for _, p := range l {
		for i := range words {
			if !p.at(words, i) {
				continue
			}
			for k := range p.words {
				left[i+k] = ""
			}
		}
	}
	return left
}
