package rewrite

import (
	"slices"
	"strings"

	"sipsum/internal/fail"
)

// depth is how far a row is indented; a dash of a list counts where it stands.
func depth(row string) int { return len(row) - len(strings.TrimLeft(row, " ")) }

// idle rows say nothing: they are empty, or a comment.
func idle(row string) bool {
	text := strings.TrimSpace(row)
	return text == "" || text[0] == '#'
}

// end gives the row behind all that stands deeper than a row. Empty rows and comments at the end
// are of what follows.
func (d *draft) end(of int) int {
	deep, end := depth(d.rows[of]), of+1
	dashed := strings.HasPrefix(strings.TrimSpace(d.rows[of]), "- ") // of an entry, not of a key, below which a list may stand at its depth
	for i := of + 1; i < len(d.rows); i++ {
		row := d.rows[i]
		if idle(row) {
			continue
		}
		if depth(row) < deep || depth(row) == deep && (dashed || !strings.HasPrefix(row[deep:], "- ")) {
			break
		}
		end = i + 1
	}
	return end
}

// insert puts rows before a row, with the line end of their neighbour.
func (d *draft) insert(before int, rows ...string) {
	eol := "\n"
	if before > 0 && strings.HasSuffix(d.rows[before-1], "\r\n") {
		eol = "\r\n"
	}
	if before > 0 && !strings.HasSuffix(d.rows[before-1], "\n") {
		d.rows[before-1] += eol
	}
	for i := range rows {
		rows[i] += eol
	}
	d.rows = slices.Insert(d.rows, before, rows...)
}

// at splits the row of a place; false if it is not one of this file.
func (d *draft) at(p fail.Place) (row int, head, tail string, ok bool) {
	if p.File != d.drink.File || p.Line < 1 || p.Line > len(d.rows) {
		return 0, "", "", false
	}
	all := []rune(d.rows[p.Line-1])
	col := min(max(p.Col-1, 0), len(all))
	return p.Line - 1, string(all[:col]), string(all[col:]), true
}

// entry gives the indentation of an entry of a list that begins at a place; false if it stands in [ ].
func entry(head string) (indent string, ok bool) {
	rest, dash := strings.CutSuffix(strings.TrimRight(head, " "), "-")
	return rest, dash && strings.TrimSpace(rest) == ""
}

// closing finds the end of an entry of a list or a map in brackets: how many bytes of a text stand before
// the comma or the bracket that ends it; false if that is not in the row.
func closing(text string) (n int, ok bool) {
	deep, quote := 0, rune(0)
	for i, c := range text {
		switch {
		case quote != 0:
			if c == quote { // '' is two strings, which does as well
				quote = 0
			}
		case (c == '"' || c == '\'') && strings.TrimSpace(text[:i]) == "", (c == '"' || c == '\'') && strings.ContainsRune("[{,:", last(text[:i])):
			quote = c
		case c == '[' || c == '{':
			deep++
		case (c == ']' || c == '}' || c == ',') && deep == 0:
			return i, true
		case c == ']' || c == '}':
			deep--
		case c == '#' && i > 0 && text[i-1] == ' ':
			return 0, false
		}
	}
	return 0, false
}

// last is the last sign of a text that is no space; 0 if there is none.
func last(text string) rune {
	text = strings.TrimRight(text, " ")
	if text == "" {
		return 0
	}
	return rune(text[len(text)-1])
}

// scalar writes a text so that YAML reads it as it stands.
func scalar(text string) string {
	const first = "-?:,[]{}#&*!|>'\"%@`~"
	if text == "" || text != strings.TrimSpace(text) || strings.ContainsRune(first, rune(text[0])) || strings.ContainsAny(text, "#,[]{}\"'\\") ||
		strings.Contains(text, ": ") || strings.HasSuffix(text, ":") {
		return "'" + strings.ReplaceAll(text, "'", "''") + "'"
	}
	return text
}

// oneRow refuses a text that would be several rows.
func oneRow(text string) error {
	if strings.ContainsAny(text, "\r\n\u2028\u2029\u0085") {
		return fail.New(fail.Wrong, "the text has more than one row", "write it in one")
	}
	return nil
}
