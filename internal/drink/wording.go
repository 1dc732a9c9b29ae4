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

// alternatives lists words: "a, b or c".
func alternatives(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

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
