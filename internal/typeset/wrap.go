package typeset

import "strings"

// Wrap breaks a text into lines of at most n columns: at spaces, but not within a figure
// unless it alone is longer than a line. A word longer than a line is broken where the
// line ends.
func Wrap(text string, n int) []string {
	var lines []string
	line := ""
	flush := func() {
		if line != "" {
			lines = append(lines, line)
		}
		line = ""
	}
	put := func(group string) {
		if line != "" && Width(line)+1+Width(group) > n {
			flush()
		}
		for Width(group) > n {
			head := headOf(group, n)
			lines = append(lines, head)
			group = group[len(head):]
		}
		if line != "" {
			line += " "
		}
		line += group
	}
	for _, group := range groups(text) {
		if Width(group) <= n {
			put(group)
			continue
		}
		for word := range strings.FieldsSeq(group) {
			put(word)
		}
	}
	flush()
	return lines
}

// headOf gives the longest beginning of a word that fits n columns, one rune at
// least.
func headOf(word string, n int) string {
	used := 0
	for i, r := range word {
		if used += Columns(r); used > n && i > 0 {
			return word[:i]
		}
	}
	return word
}
