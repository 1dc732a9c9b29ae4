package textreport

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// join writes a list as a sentence does: "a, b and c".
func join(list []string) string {
	n := len(list)
	if n < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:n-1], ", ") + " and " + list[n-1]
}

func upperFirst(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + text[size:]
}
