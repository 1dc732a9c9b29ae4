package table

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode"

	"sipsum/data"
)

// rule is one row of data/group_rules.csv:
// id,table,publisher_group,name_words,not_words,group,source.
type rule struct {
	format         string
	publisherGroup string     // empty: any
	words          [][]string // one of these must be in the name, all words of it; empty: any name
	not            [][]string // none of these may be in the name
	group          string
}

var rules = sync.OnceValues(readRules)

// Groups gives foods of one format their group of data/groups.csv.
type Groups struct{ rules []rule }

// GroupsOf reads the rules of a format. An error is a fault of sipsum's own
// data.
func GroupsOf(format string) (*Groups, error) {
	all, err := rules()
	if err != nil {
		return nil, err
	}
	g := &Groups{}
	for _, r := range all {
		if r.format == format {
			g.rules = append(g.rules, r)
		}
	}
	return g, nil
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

func readRules() ([]rule, error) {
	file, err := data.FS.Open("group_rules.csv")
	if err != nil {
		return nil, fmt.Errorf("group rules: %w", err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("group rules: group_rules.csv: %w", err)
	}
	all := make([]rule, 0, len(rows)-1)
	for _, row := range rows[1:] {
		all = append(all, rule{format: row[1], publisherGroup: row[2], words: alternatives(row[3]), not: alternatives(row[4]), group: row[5]})
	}
	return all, nil
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
