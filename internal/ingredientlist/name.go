package ingredientlist

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"sipsum/internal/food"
)

// nameOf gives the name of a food for a list, in which a comma parts ingredients: a table's
// "Milk, whole, 3.25 % fat" is whole milk – 3.25 % fat. An own food keeps its owner's order.
func nameOf(f *food.Food) string {
	if f.Group == "water" && f.Chemical {
		return "Water"
	}
	words := strings.Split(f.Name(), ", ")
	if len(words) > 1 && f.ID.Table != food.Own && !strings.ContainsAny(words[1][:1], "0123456789") {
		words = append([]string{first(unicode.ToUpper, words[1]) + " " + first(unicode.ToLower, words[0])}, words[2:]...)
	}
	return strings.Join(words, " – ")
}

// first changes the first letter of a text.
func first(change func(rune) rune, text string) string {
	r, size := utf8.DecodeRuneInString(text)
	return string(change(r)) + text[size:]
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

// wordIn looks for a word, or words, in a text: whole, whatever the case and the number.
func wordIn(text, word string) (span, bool) {
	lower, want := strings.ToLower(text), strings.TrimSuffix(strings.ToLower(word), "s")
	if len(lower) != len(text) { // a letter of another size: no place would hold
		return span{}, false
	}
	for from := 0; ; {
		at := strings.Index(lower[from:], want)
		if at < 0 {
			return span{}, false
		}
		start := from + at
		end := start + len(want)
		if strings.HasPrefix(lower[end:], "s") {
			end++
		}
		before, _ := utf8.DecodeLastRuneInString(lower[:start])
		after, _ := utf8.DecodeRuneInString(lower[end:])
		if !unicode.IsLetter(before) && !unicode.IsLetter(after) {
			return span{start, end}, true
		}
		from = end
	}
}

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
