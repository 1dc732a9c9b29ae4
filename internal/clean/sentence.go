package clean

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Listed writes a list as a sentence does: "a, b and c".
func Listed(list []string) string {
	n := len(list)
	if n < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:n-1], ", ") + " and " + list[n-1]
}

// UpperFirst writes a text as a sentence begins; pH is written so everywhere.
func UpperFirst(text string) string {
	if strings.HasPrefix(text, "pH") {
		return text
	}
	return first(text, unicode.ToUpper)
}

// LowerFirst writes a text as it stands inside a sentence: "vitamin D".
func LowerFirst(text string) string { return first(text, unicode.ToLower) }

func first(text string, form func(rune) rune) string {
	r, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return ""
	}
	return string(form(r)) + text[size:]
}
