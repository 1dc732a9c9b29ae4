package clean

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// The most runes that a name and a longer text may have on a page.
const (
	MostName  = 120
	MostProse = 1200
)

// mostMarks is how many accents may stand on one letter.
const mostMarks = 4

// Name makes a name harmless.
func Name(text string) string { return Text(text, MostName) }

// Prose makes a sentence or a few harmless.
func Prose(text string) string { return Text(text, MostProse) }

// Text makes a text of a file or a table harmless wherever it is printed: blanks of
// every kind become one space each run; control characters, characters that
// turn the reading direction, and invisible ones are taken out; what is not
// UTF-8 becomes U+FFFD; piles of accents are cut; and a text of more than most
// runes ends with "…".
func Text(text string, most int) string {
	if harmless(text, most) {
		return text
	}
	var b strings.Builder
	runes, marks, blank := 0, 0, false
	for _, r := range text {
		switch {
		case unicode.IsSpace(r):
			blank = runes > 0
			continue
		case hidden(r):
			continue
		case unicode.Is(unicode.M, r):
			if marks++; marks > mostMarks {
				continue
			}
		default:
			marks = 0
		}
		left := most - runes
		if blank {
			left--
		}
		if left < 1 {
			return clip(b.String(), most)
		}
		if blank {
			b.WriteByte(' ')
			runes++
			blank = false
		}
		b.WriteRune(r)
		runes++
	}
	return b.String()
}

// harmless reports whether a text is plain letters and signs of ASCII, one blank between words: most are, and
// nothing is to be done with them.
func harmless(text string, most int) bool {
	if len(text) > most {
		return false
	}
	blank := true
	for i := range len(text) {
		c := text[i]
		if c < ' ' || c > '~' || c == ' ' && blank {
			return false
		}
		blank = c == ' '
	}
	return !blank || text == ""
}

// hidden reports whether a rune can steer a terminal, turn the reading
// direction (Unicode Standard Annex 9), or hide in a text unseen. Joiners stay:
// Persian and Indic names need them.
func hidden(r rune) bool {
	switch {
	case unicode.Is(unicode.Cc, r), unicode.Is(unicode.Bidi_Control, r):
		return true
	case r == '\u200c', r == '\u200d':
		return false
	case unicode.Is(unicode.Cf, r), unicode.Is(unicode.Variation_Selector, r):
		return true
	}
	return unicode.Is(unicode.Zl, r) || unicode.Is(unicode.Zp, r) || unicode.Is(unicode.Co, r)
}

// clip ends a text with "…" in place of its last rune if it has most of them.
func clip(text string, most int) string {
	if most < 1 {
		return ""
	}
	for utf8.RuneCountInString(text) >= most {
		_, size := utf8.DecodeLastRuneInString(text)
		text = text[:len(text)-size]
	}
	return strings.TrimRight(text, " ") + "…"
}
