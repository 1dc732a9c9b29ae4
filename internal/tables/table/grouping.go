package table

import (
	"slices"
	"strings"
	"sync"
	"unicode"

	"sipsum/internal/embedded"
)

// rule is one row of data/group_rules.csv.
type rule struct {
	format         string
	publisherGroup string     // empty: any
	words          [][]string // one of these must be in the name, all words of it; empty: any name
	not            [][]string // none of these may be in the name
	group          string
}

var rules = sync.OnceValue(readRules)

// Groups gives foods of one format their group of data/groups.csv.
type Groups struct{ rules []rule }

// GroupsOf gives the rules of a format.
func GroupsOf(format string) *Groups {
	g := &Groups{}
	for _, r := range rules() {
		if r.format == format {
			g.rules = append(g.rules, r)
		}
	}
	return g
}

// Group gives the group of a food by the first rule that fits; empty if none
// does. Case does not matter; words are whole words.
func (g *Groups) Group(publisherGroup, name string) string {
	words := wordsOf(name)
	for _, r := range g.rules {
		if r.publisherGroup != "" && !strings.EqualFold(r.publisherGroup, publisherGroup) {
			continue
		}
		if len(r.words) > 0 && !anyIn(r.words, words) {
			continue
		}
		if anyIn(r.not, words) {
			continue
		}
		return r.group
	}
	return ""
}

func readRules() []rule {
	var all []rule
	for _, row := range embedded.Rows("group_rules.csv") {
		all = append(all, rule{
			format: row.Text("table"), publisherGroup: row.Text("publisher_group"),
			words: alternatives(row.Text("name_words")), not: alternatives(row.Text("not_words")), group: row.Text("group"),
		})
	}
	return all
}

// alternatives reads "oat drink|rice drink": alternatives separated by "|", the
// words of one separated by blanks.
func alternatives(text string) [][]string {
	var all [][]string
	for part := range strings.SplitSeq(text, "|") {
		if words := wordsOf(part); len(words) > 0 {
			all = append(all, words)
		}
	}
	return all
}

// anyIn reports whether all words of one alternative are among the words of a
// name.
func anyIn(alternatives [][]string, words []string) bool {
	return slices.ContainsFunc(alternatives, func(wanted []string) bool {
		return !slices.ContainsFunc(wanted, func(w string) bool { return !slices.Contains(words, w) })
	})
}

// wordsOf cuts a text into lower-case words of letters and digits.
func wordsOf(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}
