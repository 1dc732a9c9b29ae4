package cli

import (
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/sheet"
)

// constituentOf reads a constituent as a designer writes it: by its tagname, in
// any case, or by the words that sipsum prints. "malic" is malic acid.
func constituentOf(text string) (*constituent.Constituent, bool) {
	if c, ok := constituent.Find(strings.TrimSpace(text)); ok {
		return c, true
	}
	said := plainWords(text)
	for _, reading := range []func(*constituent.Constituent) []string{tagnames, printedWords, shortWords} {
		for _, c := range constituent.All() {
			for _, word := range reading(c) {
				if said != "" && plainWords(word) == said {
					return c, true
				}
			}
		}
	}
	return nil, false
}

func tagnames(c *constituent.Constituent) []string {
	return append([]string{string(c.ID)}, c.Aliases...)
}

// printedWords are the words on a sheet and the name in the vocabulary.
func printedWords(c *constituent.Constituent) []string { return []string{sheet.WordsFor(c), c.Name} }

// shortWords leave out what an acid is.
func shortWords(c *constituent.Constituent) []string {
	if short, ok := strings.CutSuffix(c.Name, " acid"); ok {
		return []string{short}
	}
	return nil
}

// plainWords writes words in small letters with single blanks.
func plainWords(text string) string { return strings.Join(strings.Fields(strings.ToLower(text)), " ") }

// named is the name of a constituent with its tagname: "malic acid (MALAC)".
func named(c *constituent.Constituent) string {
	if string(c.ID) == c.Name {
		return c.Name
	}
	return c.Name + " (" + string(c.ID) + ")"
}

// examples names constituents that a word may mean: those in whose name it stands,
// else the usual ones.
func examples(text string) string {
	const most = 4
	var near []string
	for _, c := range constituent.All() {
		if said := plainWords(text); said != "" && len(near) < most && strings.Contains(plainWords(c.Name), said) {
			near = append(near, named(c))
		}
	}
	if len(near) == 0 {
		for _, id := range []constituent.ID{"CITAC", "MALAC", "CAFFN", "SUGAR"} {
			near = append(near, named(constituent.Must(id)))
		}
	}
	return strings.Join(near, ", ")
}
