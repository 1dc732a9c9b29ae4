package drink

import (
	"fmt"
	"strings"
)

// clip keeps messages short whatever the file holds.
func clip(text string) string {
	const most = 60
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "…"
	}
	return text
}

// quoted shows a text of the file in a message; what does not print is escaped.
func quoted(text string) string { return fmt.Sprintf("%q", clip(text)) }

// quoteAdvice tells how a text that YAML misreads is written.
func quoteAdvice(text string) string {
	if text == "" {
		return "put quotes round the text if it is meant to be read as it stands"
	}
	if strings.Contains(text, `"`) {
		return "put quotes round it: '" + strings.ReplaceAll(clip(text), "'", "''") + "'"
	}
	return `put quotes round it: "` + clip(text) + `"`
}

// each gives a text for each of a list.
func each[T any](list []T, text func(T) string) []string {
	out := make([]string, len(list))
	for i, x := range list {
		out[i] = text(x)
	}
	return out
}

// guess asks for the word that a writer most likely meant, before other advice.
func guess(word string, words []string, do string) string {
	if meant := near(word, words); meant != "" {
		return strings.TrimSpace(`did you mean "` + meant + `"? ` + do)
	}
	return do
}

// near gives the word that a writer most likely meant, "" if none is close.
func near(word string, words []string) string {
	best, bestAt := "", 3 // more than two slips is another word
	for _, w := range words {
		if d := distance(strings.ToLower(word), strings.ToLower(w), bestAt); d < bestAt && d < len(w) && 2*d <= max(len(w), len(word)) { // of three letters one
			best, bestAt = w, d
		}
	}
	return best
}

// distance counts the letters to insert, delete or replace between two words;
// it gives most as soon as the count cannot be below it.
func distance(a, b string, most int) int {
	x, y := []rune(a), []rune(b)
	if len(x)-len(y) >= most || len(y)-len(x) >= most {
		return most
	}
	row := make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i, c := range x {
		diagonal := row[0]
		row[0] = i + 1
		for j, d := range y {
			change := diagonal
			if c != d {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j]+1, row[j+1]+1)
		}
	}
	return min(row[len(y)], most)
}
