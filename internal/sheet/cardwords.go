package sheet

import (
	"strings"
	"sync"

	"sipsum/internal/embedded"
)

// Language is that of the cards: data/card_words.csv has no other yet.
const Language = "en"

// cardWords are the texts of cards, and of the sheet on paper, by their keys.
var cardWords = sync.OnceValue(func() map[string]string {
	words := map[string]string{}
	for _, file := range []string{"card_words.csv", "paper_words.csv"} {
		for _, row := range embedded.Rows(file) {
			if row.Text("language") == Language {
				words[row.Text("key")] = row.Text("text")
			}
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
