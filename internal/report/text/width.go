package textreport

import (
	"strings"
	"unicode"
)

// wide are the ranges of runes that take two columns (Unicode Standard Annex 11,
// East Asian Wide and Fullwidth), as far as names of foods are likely to use
// them.
var wide = &unicode.RangeTable{
	R16: []unicode.Range16{
		{Lo: 0x1100, Hi: 0x115f, Stride: 1},
		{Lo: 0x2e80, Hi: 0x303e, Stride: 1},
		{Lo: 0x3041, Hi: 0x4dbf, Stride: 1},
		{Lo: 0x4e00, Hi: 0xa4cf, Stride: 1},
		{Lo: 0xac00, Hi: 0xd7a3, Stride: 1},
		{Lo: 0xf900, Hi: 0xfaff, Stride: 1},
		{Lo: 0xfe30, Hi: 0xfe6f, Stride: 1},
		{Lo: 0xff01, Hi: 0xff60, Stride: 1},
		{Lo: 0xffe0, Hi: 0xffe6, Stride: 1},
	},
	R32: []unicode.Range32{
		{Lo: 0x1f300, Hi: 0x1f64f, Stride: 1},
		{Lo: 0x1f900, Hi: 0x1f9ff, Stride: 1},
		{Lo: 0x20000, Hi: 0x3fffd, Stride: 1},
	},
}

// columns counts the terminal columns of a rune.
func columns(r rune) int {
	switch {
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		return 0
	case unicode.Is(wide, r):
		return 2
	}
	return 1
}

// width counts the terminal columns of a text.
func width(text string) int {
	n := 0
	for _, r := range text {
		n += columns(r)
	}
	return n
}

// left fills a text with spaces on its right up to n columns.
func left(text string, n int) string { return text + strings.Repeat(" ", max(n-width(text), 0)) }

// right fills a text with spaces on its left up to n columns.
func right(text string, n int) string { return strings.Repeat(" ", max(n-width(text), 0)) + text }

// fit cuts a text to n columns, with "…" where something is missing.
func fit(text string, n int) string {
	if width(text) <= n {
		return text
	}
	var b strings.Builder
	room := n - 1
	for _, r := range text {
		if room -= columns(r); room < 0 {
			break
		}
		b.WriteRune(r)
	}
	return strings.TrimRight(b.String(), " ") + "…"
}

// leaders fills a text with a dotted line up to n columns, the dots in even
// columns so that they stand below each other.
func leaders(text string, n int) string {
	var b strings.Builder
	b.WriteString(text)
	for at := width(text); at < n; at++ {
		if at%2 == 0 && at > width(text) && at < n-1 {
			b.WriteRune('·')
		} else {
			b.WriteByte(' ')
		}
	}
	return b.String()
}

// wrap breaks a text at spaces into lines of at most n columns. A word longer
// than a line is broken where the line ends.
func wrap(text string, n int) []string {
	var lines []string
	line := ""
	flush := func() {
		if line != "" {
			lines = append(lines, line)
		}
		line = ""
	}
	for word := range strings.SplitSeq(text, " ") {
		if word == "" {
			continue
		}
		if line != "" && width(line)+1+width(word) > n {
			flush()
		}
		for width(word) > n {
			head := headOf(word, n)
			lines = append(lines, head)
			word = word[len(head):]
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	flush()
	return lines
}

// headOf gives the longest beginning of a word that fits n columns, one rune at
// least.
func headOf(word string, n int) string {
	used := 0
	for i, r := range word {
		if used += columns(r); used > n && i > 0 {
			return word[:i]
		}
	}
	return word
}
