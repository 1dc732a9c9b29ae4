package drink

import (
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/token"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// file is the text of one file, the drink or a pantry, and where everything stands in it.
type file struct {
	path    string
	rows    []string // the lines of the file, without line ends
	faults  *fail.List
	begins  string // how such a file begins
	torn    bool   // a line was set aside, so what seems missing may be there
	counted struct {
		row   string // the last line whose characters were counted
		runes int
	}
}

// at makes a place that lies within the file, whatever the YAML reader says.
func (r *file) at(line, col int) fail.Place {
	if len(r.rows) > 0 {
		line = min(max(line, 1), len(r.rows))
		col = min(max(col, 1), r.runes(r.rows[line-1])+1)
	}
	return fail.Place{File: r.path, Line: line, Col: col}
}

// runes counts the characters of a line, once for all the places in it: a file may be
// one line with a fault at every other word.
func (r *file) runes(row string) int {
	if r.counted.row != row { // the same text in memory is seen to be so at once
		r.counted.row, r.counted.runes = row, utf8.RuneCountInString(row)
	}
	return r.counted.runes
}

func (r *file) tokenAt(t *token.Token) fail.Place {
	if t == nil || t.Position == nil {
		return r.at(1, 1)
	}
	return r.at(t.Position.Line, t.Position.Column)
}

// nodeAt gives where a node begins as a person sees it: a block map begins at
// its first key.
func (r *file) nodeAt(n ast.Node) fail.Place {
	if m, ok := n.(*ast.MappingNode); ok && !m.IsFlowStyle && len(m.Values) > 0 {
		return r.tokenAt(m.Values[0].Key.GetToken())
	}
	return r.tokenAt(n.GetToken())
}

// inside gives the place of the tail of a scalar's text, exact if the scalar
// stands in the file as it reads.
func (r *file) inside(n ast.Node, text, tail string) fail.Place {
	t := n.GetToken()
	shift := utf8.RuneCountInString(text) - utf8.RuneCountInString(tail)
	switch text = unit.PlainSpaces(text); unit.PlainSpaces(strings.TrimSpace(t.Origin)) {
	case text:
		return r.at(t.Position.Line, t.Position.Column+shift)
	case `"` + text + `"`, `'` + text + `'`:
		return r.at(t.Position.Line, t.Position.Column+shift+1)
	}
	return r.tokenAt(t)
}
