package store

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// tokens splits a text into words as the index of the names does (unicode61 of FTS5, without diacritics): runs of
// letters and numbers, in small letters, Latin ones without their accents.
func tokens(text string) []string {
	return strings.FieldsFunc(folded(text), func(r rune) bool { return !inWord(r) })
}

// inWord tells whether a rune is part of a word.
func inWord(r rune) bool {
	return unicode.IsLetter(r) || unicode.IsNumber(r) || unicode.Is(unicode.Co, r)
}

// folded writes a text in small letters and without the accents of Latin ones, which the index takes for nothing.
func folded(text string) string {
	if isPlain(text) {
		return strings.ToLower(text)
	}
	return strings.Map(func(r rune) rune {
		if isAccent(r) {
			return -1
		}
		return bare(unicode.ToLower(r))
	}, text)
}

// isPlain tells whether a text is of ASCII alone, as most are.
func isPlain(text string) bool {
	for i := range len(text) {
		if text[i] >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

// bare gives the letter of ASCII that a letter with accents is made of, else the letter itself: the index folds no
// accents of other scripts, which are letters of their own.
func bare(r rune) rune {
	switch {
	case r < utf8.RuneSelf:
		return r
	case r == 'ς': // the sigma at the end of a word
		return 'σ'
	case r == 'µ': // the sign of micro
		return 'μ'
	}
	parts := norm.NFD.PropertiesString(string(r)).Decomposition()
	if len(parts) == 0 || parts[0] >= utf8.RuneSelf || !unicode.IsLetter(rune(parts[0])) {
		return r
	}
	for _, accent := range string(parts[1:]) {
		if !isAccent(accent) {
			return r
		}
	}
	return rune(parts[0])
}

// isAccent tells whether a rune is an accent on the letter before it.
func isAccent(r rune) bool { return r >= '\u0300' && r <= '\u036f' }

// isNumber tells a number, as the index has it, from other words.
func isNumber(word string) bool { return strings.Trim(word, "0123456789") == "" }
