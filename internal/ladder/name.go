package ladder

import (
	"cmp"
	"strings"
	"unicode"

	"sipsum/internal/clean"
	"sipsum/internal/food"
	"sipsum/internal/ledger"
)

// Words gives each food of a pot the shortest of its names that tells it from the others: what
// stands before the first comma, else that with what follows ("brown sugar"), else its whole name,
// else that with its code.
func Words(pot *ledger.Pot) map[food.ID]string {
	words, foods := map[food.ID]string{}, map[food.ID]*food.Food{}
	for _, r := range pot.Rows {
		foods[r.Profile.Food.ID] = r.Profile.Food
	}
	forms := []func(*food.Food) string{
		func(f *food.Food) string { return Head(f.Name()) }, turned, (*food.Food).Name,
		func(f *food.Food) string { return f.Name() + " (" + f.ID.String() + ")" },
	}
	for _, form := range forms {
		alike := map[string]int{}
		for _, f := range foods {
			alike[strings.ToLower(form(f))]++
		}
		for id, f := range foods {
			if name := form(f); words[id] == "" && (name != "" && alike[strings.ToLower(name)] == 1) {
				words[id] = barWord(clean.Name(name))
			}
		}
	}
	for id := range foods {
		words[id] = cmp.Or(words[id], clean.Name(id.String()))
	}
	return words
}

// The is a word with its article: "the lemon juice", and "what a ferment made" as it stands.
func The(word string) string {
	if strings.HasPrefix(word, "what ") {
		return word
	}
	return "the " + word
}

// turned is what a table says first of a food before its name: "Sugar, brown" is brown sugar.
func turned(f *food.Food) string {
	words := strings.Split(f.Name(), ", ")
	if len(words) < 2 || f.ID.Table == food.Own || strings.ContainsAny(words[1][:min(len(words[1]), 1)], "0123456789") {
		return f.Name()
	}
	return clean.LowerFirst(words[1]) + " " + clean.LowerFirst(words[0])
}

// Suggests reports whether the name of a pot makes a guest think of an ingredient: they share a
// word, and not only what kind of thing both are ("cherry syrup", "maple syrup").
func Suggests(pot, word string) bool {
	name, of := wordsIn(pot), wordsIn(word)
	for i, w := range name {
		for k, v := range of {
			kind := i == len(name)-1 && k == len(of)-1 && k > 0
			if w == v && !kind {
				return true
			}
		}
	}
	return false
}

// wordsIn are the words of a name, one of a thing like many of it.
func wordsIn(name string) []string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) })
	for i, w := range words {
		words[i] = strings.TrimSuffix(w, "s")
	}
	return words
}

// Head is a name without what a table says of it: "Milk, whole" is milk.
func Head(name string) string {
	name = clean.Name(name)
	for _, sign := range []string{", ", " (", " – "} {
		if before, _, found := strings.Cut(name, sign); found && before != "" {
			name = before
		}
	}
	return name
}

// barWord writes a name as it stands in a line, unless it holds a name of its own.
func barWord(name string) string {
	_, rest, _ := strings.Cut(name, " ")
	first, _, _ := strings.Cut(name, " ")
	inner := strings.TrimLeft(first, strings.ToUpper(first[:min(len(first), 1)]))
	if strings.IndexFunc(rest, unicode.IsUpper) >= 0 || strings.IndexFunc(inner, unicode.IsUpper) >= 0 {
		return name
	}
	return clean.LowerFirst(name)
}
