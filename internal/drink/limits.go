package drink

import (
	"bytes"
	"cmp"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"sipsum/internal/embedded"
	"sipsum/internal/unit"
)

// The limits of a drink file, from data/size_limits.csv with their reasons. They keep a
// hostile file from costing more than a moment; an honest one never meets them.
var (
	mostBytes    = limit("file")
	mostName     = limit("name")  // runes of a name, a food, a code
	mostProse    = limit("prose") // runes of a note, a source, a sentence, a check
	mostDepth    = limit("depth")
	mostTokens   = limit("words")
	mostKeys     = limit("keys")
	mostBlank    = limit("blank")
	mostTags     = limit("tags") // of all categories together
	mostPantries = limit("pantries")
	mostServes   = limit("serves")
	mostBase     = float64(limit("amount")) // g or ml of one amount
	mostLines    = limit("lines written")
)

// limit gives a row of data/size_limits.csv.
func limit(name string) int { return embedded.Limit(name) }

// MostBytes gives the longest that a file may be.
func MostBytes() int { return mostBytes }

// Draws gives the fewest and the most draws that a drink may be calculated with.
func Draws() (least, most int) { return limit("draws least"), limit("draws most") }

// beginsDrink is how a drink file begins.
const beginsDrink = `begin with drink: "a name", serves: 1 and build:`

// hygiene checks the bytes before YAML is read: size, encoding, characters and
// tabs. It gives the text with "\n" as the only line end and without a byte
// order mark; ok is false if the text should not be read any further.
func (r *file) hygiene(raw []byte) (text string, ok bool) {
	top := r.at(1, 1)
	if len(raw) > mostBytes {
		r.faults.Add(top, "split it, or move foods and components to a shelf, a file named in use:", "the file has more than %d bytes", mostBytes)
		return "", false
	}
	raw = bytes.TrimPrefix(raw, []byte("\ufeff"))
	raw = bytes.ReplaceAll(raw, []byte("\r\n"), []byte("\n"))
	r.rows = strings.Split(string(raw), "\n")
	before := r.faults.Len()
	if line, col, bad := firstBadByte(raw); bad {
		r.faults.Add(r.at(line, col), "save it as plain UTF-8 text", "the file is not UTF-8 text")
		return "", false
	}
	raw = []byte(unit.PlainSpaces(string(raw))) // YAML knows one space, and places count characters
	r.rows = strings.Split(string(raw), "\n")
	if len(bytes.TrimSpace(raw)) == 0 {
		r.faults.Add(top, cmp.Or(r.begins, beginsDrink), "the file is empty")
		return "", false
	}
	blank := 0
	for i, line := range r.rows {
		r.checkLine(i+1, line)
		if blank++; len(bytes.TrimSpace([]byte(line))) > 0 {
			blank = 0
		}
		if blank == mostBlank+1 {
			r.faults.Add(r.at(i+1, 1), "take them out", "more than %d empty lines in a row", mostBlank)
		}
	}
	return string(raw), r.faults.Len() == before
}

// checkLine reports the first forbidden character of a line, and a tab in its
// indentation.
func (r *file) checkLine(number int, line string) {
	col, indent := 0, true
	if at, c := hidden(line); at > 0 {
		r.faults.Add(r.at(number, at), "take it out: "+clip(visible(line)), "there is %s in the text", describe(c))
		return
	}
	for _, c := range line {
		col++
		if c == '\t' && indent && len(bytes.TrimSpace([]byte(line))) > 0 {
			r.faults.Add(r.at(number, col), "indent with spaces", "there is a tab in the indentation")
			return
		}
		if c != ' ' {
			indent = false
		}
		if c != '\t' && forbidden(c) {
			r.faults.Add(r.at(number, col), "take it out", "there is %s in the text", describe(c))
			return
		}
	}
}

func firstBadByte(raw []byte) (line, col int, bad bool) {
	line, col = 1, 1
	for i := 0; i < len(raw); {
		c, size := utf8.DecodeRune(raw[i:])
		if c == 0 || c == utf8.RuneError && size == 1 {
			return line, col, true
		}
		if col++; c == '\n' {
			line, col = line+1, 1
		}
		i += size
	}
	return 0, 0, false
}

// forbidden tells the characters that no text of a drink may hold: controls,
// line separators, the byte order mark, and the marks that reorder what a
// reader sees (UAX #9, explicit embeddings, overrides and isolates).
func forbidden(c rune) bool {
	return unicode.IsControl(c) || reorders(c) || c == '\u2028' || c == '\u2029' || c == '\ufeff'
}

func reorders(c rune) bool {
	return c >= '\u202a' && c <= '\u202e' || c >= '\u2066' && c <= '\u2069'
}

// hidden finds the first character of a text that nobody sees and that makes two names of one:
// zero-width marks, soft hyphens. The joiners of scripts that need them (UAX #31, 2.3) and of
// pictures stay between what they join. The place counts from 1; 0 says that there is none.
func hidden(text string) (at int, c rune) {
	before := ' '
	for _, c := range text {
		at++
		switch c {
		case '\u200c', '\u200d':
			if before < '\u0600' {
				return at, c
			}
		case '\u200b', '\u200e', '\u200f', '\u2060', '\u00ad', '\u180e', '\ufeff':
			return at, c
		}
		before = c
	}
	return 0, 0
}

// visible gives a text without what nobody sees.
func visible(text string) string {
	for {
		at, c := hidden(text)
		if at == 0 {
			return strings.TrimSpace(text)
		}
		text = strings.Replace(text, string(c), "", 1)
	}
}

func describe(c rune) string {
	if at, _ := hidden(string(c)); at > 0 {
		return fmt.Sprintf("a character that nobody sees (U+%04X)", c)
	}
	if reorders(c) {
		return fmt.Sprintf("a character that reorders text (U+%04X)", c)
	}
	return fmt.Sprintf("a control character (U+%04X)", c)
}
