package drink

import (
	"errors"
	"regexp"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"
)

// This file knows a key without a space after its colon, "serves:1", which to YAML is no key.

// gluedRow is such a row of a block map.
var gluedRow = regexp.MustCompile(`^( *(?:- +)?)([A-Za-z][A-Za-z-]*):([^\s:].*)$`)

// parted reports the row at which YAML stumbled if its key is glued to its value, and parts them,
// so that the rest of the file can be read.
func (r *file) parted(err error) bool {
	var e syntaxError
	if !errors.As(err, &e) || e.GetToken() == nil {
		return false
	}
	at := r.tokenAt(e.GetToken()).Line
	for number := min(at, len(r.rows)); number >= 1 && number >= at-1; number-- {
		m := gluedRow.FindStringSubmatch(r.rows[number-1])
		if m == nil || !slices.Contains(everyKey, asKnown(m[2], everyKey)) {
			continue
		}
		r.faults.Add(r.at(number, len(m[1])+1), "write: "+m[2]+": "+clip(m[3]), "there is no space after the colon of %s", m[2])
		r.rows[number-1] = m[1] + m[2] + ": " + m[3]
		return true
	}
	return false
}

// gluedKey gives the key that a text in brackets begins with, without a space after its colon:
// "through:cloth".
func gluedKey(text string, known []string) (key, rest string, ok bool) {
	key, rest, found := strings.Cut(text, ":")
	key = asKnown(key, known)
	return key, rest, found && slices.Contains(known, key)
}

// gluedDashes reports the rows "-36 g espresso" of what YAML takes for one text, which ends or
// begins where the node is.
func (r *file) gluedDashes(n ast.Node) bool {
	glued := func(number int) (col int, rest string, ok bool) {
		if number < 1 || number > len(r.rows) {
			return 0, "", false
		}
		body := strings.TrimLeft(r.rows[number-1], " ")
		rest, ok = strings.CutPrefix(body, "-")
		return len(r.rows[number-1]) - len(body) + 1, rest, ok && rest != "" && rest[0] != ' '
	}
	first := r.nodeAt(n).Line
	last := first
	for _, _, ok := glued(first - 1); ok; _, _, ok = glued(first - 1) {
		first--
	}
	for _, _, ok := glued(last + 1); ok; _, _, ok = glued(last + 1) {
		last++
	}
	found := false
	for number := first; number <= last; number++ {
		if col, rest, ok := glued(number); ok {
			found = true
			r.faults.Add(r.at(number, col), "write: - "+clip(rest), "there is no space after the dash")
		}
	}
	return found
}

var keyInARow = regexp.MustCompile(`(?:^|, )([A-Za-z][A-Za-z -]*): `)

// keysInARow parts a row "per: 100 g, energy: 180 kJ", which wants brackets or rows of their own.
func keysInARow(row string) []string {
	at := keyInARow.FindAllStringIndex(strings.TrimSpace(row), -1)
	row = strings.TrimSpace(row)
	var parts []string
	for i, m := range at {
		end := len(row)
		if i+1 < len(at) {
			end = at[i+1][0]
		}
		parts = append(parts, clip(strings.TrimPrefix(row[m[0]:end], ", ")))
	}
	return parts
}
