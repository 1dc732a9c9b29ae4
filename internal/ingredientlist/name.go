package ingredientlist

import (
	"strings"
	"unicode"

	"sipsum/internal/food"
)

// nameOf gives the name of a food for a list, in which a comma parts ingredients: "Milk, whole"
// is whole milk. An own food has the name that its owner wrote.
func nameOf(f *food.Food) string {
	name := f.Name()
	if f.Group == "water" && f.Chemical {
		return "water"
	}
	if f.ID.Table == food.Own {
		return name
	}
	head, rest, found := strings.Cut(name, ", ")
	switch {
	case !found:
		return name
	case strings.Contains(rest, ", "): // a table's long name does not read backwards
		return strings.ReplaceAll(name, ", ", " – ")
	}
	return rest + " " + lowerFirst(head)
}

func lowerFirst(text string) string {
	for i, r := range text {
		return string(unicode.ToLower(r)) + text[i+len(string(r)):]
	}
	return text
}

// emphasise marks the words of a name that name an allergen, and adds those that do not stand in
// it in brackets.
func emphasise(name string, words []string) []Part {
	parts := []Part{{Text: name}}
	var missing []string
	for _, word := range words {
		if i, n := find(parts, word); i >= 0 {
			parts = split(parts, i, n)
		} else {
			missing = append(missing, word)
		}
	}
	for i, word := range missing {
		before := ", "
		if i == 0 {
			before = " ("
		}
		parts = append(parts, Part{Text: before}, Part{Text: word, Strong: true})
	}
	if len(missing) > 0 {
		parts = append(parts, Part{Text: ")"})
	}
	return parts
}

// span is where a word stands in a part.
type span struct{ from, to int }

// find looks for a word among the parts that are not strong yet, whole and whatever its number.
func find(parts []Part, word string) (at int, where span) {
	for i, p := range parts {
		if p.Strong {
			continue
		}
		if s, ok := wordIn(p.Text, word); ok {
			return i, s
		}
	}
	return -1, span{}
}

// wordIn looks for a word in a text.
func wordIn(text, word string) (span, bool) {
	from := -1
	for i, r := range text + " " {
		letter := unicode.IsLetter(r)
		switch {
		case letter && from < 0:
			from = i
		case !letter && from >= 0:
			if singular(text[from:i]) == singular(word) {
				return span{from, i}, true
			}
			from = -1
		}
	}
	return span{}, false
}

// singular compares words whatever their case and number.
func singular(word string) string { return strings.TrimSuffix(strings.ToLower(word), "s") }

// split makes the span of a part strong.
func split(parts []Part, at int, s span) []Part {
	text := parts[at].Text
	var out []Part
	out = append(out, parts[:at]...)
	if s.from > 0 {
		out = append(out, Part{Text: text[:s.from]})
	}
	out = append(out, Part{Text: text[s.from:s.to], Strong: true})
	if s.to < len(text) {
		out = append(out, Part{Text: text[s.to:]})
	}
	return append(out, parts[at+1:]...)
}
