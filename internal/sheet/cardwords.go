package sheet

import (
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"sipsum/internal/embedded"
)

// Language is that of the cards: data/card_words.csv has no other yet.
const Language = "en"

// cardWords are the texts of cards by their keys.
var cardWords = sync.OnceValue(func() map[string]string {
	words := map[string]string{}
	for _, row := range embedded.Rows("card_words.csv") {
		if row.Text("language") == Language {
			words[row.Text("key")] = row.Text("text")
		}
	}
	return words
})

// say gives a text of a card, with its gaps {} filled in order. A key that is not there is a
// fault of the build.
func say(key string, gaps ...string) string {
	text, ok := cardWords()[key]
	if !ok {
		panic("sheet: card_words.csv has no text " + key)
	}
	for _, with := range gaps {
		text = strings.Replace(text, "{}", with, 1)
	}
	return text
}

// listed writes a list as a sentence does: "a, b and c".
func listed(list []string) string {
	n := len(list)
	if n < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:n-1], ", ") + " and " + list[n-1]
}

func upperFirst(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}
