package typeset

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

// Columns counts the terminal columns of a rune.
func Columns(r rune) int {
	switch {
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		return 0
	case unicode.Is(wide, r):
		return 2
	}
	return 1
}

// Width counts the terminal columns of a text.
func Width(text string) int {
	n := 0
	for _, r := range text {
		n += Columns(r)
	}
	return n
}

// Left fills a text with spaces on its right up to n columns.
func Left(text string, n int) string { return text + strings.Repeat(" ", max(n-Width(text), 0)) }

// Right fills a text with spaces on its left up to n columns.
func Right(text string, n int) string { return strings.Repeat(" ", max(n-Width(text), 0)) + text }

// Fit cuts a text to n columns, with "…" where something is missing.
func Fit(text string, n int) string {
	if Width(text) <= n {
		return text
	}
	var b strings.Builder
	room := n - 1
	for _, r := range text {
		if room -= Columns(r); room < 0 {
			break
		}
		b.WriteRune(r)
	}
	return strings.TrimRight(b.String(), " ") + "…"
}

// Leaders fills a text with a dotted line up to n columns, the dots in even
// Columns so that they stand below each other.
func Leaders(text string, n int) string {
	var b strings.Builder
	b.WriteString(text)
	for at := Width(text); at < n; at++ {
		if at%2 == 0 && at > Width(text) && at < n-1 {
			b.WriteRune('·')
		} else {
			b.WriteByte(' ')
		}
	}
	return b.String()
}
