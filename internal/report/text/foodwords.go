package textreport

import (
	"maps"
	"regexp"
	"slices"

	"sipsum/internal/sheet"
)

// spoken is a code that says what it stands for, core:lemon-juice and not sr:09152, or that the
// designer gave.
var spoken = regexp.MustCompile(`^own:|:.*[a-z]{3}`)

// namesOfFoods gives the names of a drink's foods whose ids say nothing to a reader.
func namesOfFoods(s *sheet.Sheet) map[string]string {
	names := map[string]string{}
	for _, item := range s.Assay.Items {
		if id := item.Food.ID.String(); !spoken.MatchString(id) {
			names[id] = Clean(item.Food.Name(), mostName)
		}
	}
	return names
}

// inWords puts the names of foods in the place of ids that say nothing in a sentence.
func (p *page) inWords(sentence string) string {
	text := Clean(sentence, mostProse)
	for _, id := range slices.Sorted(maps.Keys(p.names)) {
		whole := regexp.MustCompile(regexp.QuoteMeta(Clean(id, mostName)) + `\b`)
		text = whole.ReplaceAllLiteralString(text, p.foodWords(id))
	}
	return text
}

// foodWords calls a food by its id where that is a word, else by its name with the id beside it.
func (p *page) foodWords(id string) string {
	if name, ok := p.names[id]; ok && name != "" {
		return name + " (" + Clean(id, mostName) + ")"
	}
	return Clean(id, mostName)
}
