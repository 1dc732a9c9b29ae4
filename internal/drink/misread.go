package drink

import (
	"errors"
	"regexp"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// misread reports an amount or a quantity that cannot be read, with the whole line as it should
// be where that can be told.
func (r *file) misread(at fail.Place, err error) {
	var m *unit.Misread
	if !errors.As(err, &m) {
		r.faults.Join(at, err)
		return
	}
	r.faults.Add(at, m.Advice(r.before(at)), "%s", m.What)
}

// rewritten gives the text as it should be, if the error tells.
func rewritten(err error) (string, bool) {
	var m *unit.Misread
	if !errors.As(err, &m) || len(m.Write) == 0 {
		return "", false
	}
	return m.Write[0], true
}

// lastKey is the key before a value, quotes and all.
var lastKey = regexp.MustCompile(`([^\s,:{}\[\]]+|"[^"]*"|'[^']*'):\s+$`)

// before gives what stands in the file before a value, as a reader would copy it: the dash of an
// entry, or the key.
func (r *file) before(at fail.Place) string {
	if at.File != r.path || at.Line < 1 || at.Line > len(r.rows) {
		return ""
	}
	row := []rune(r.rows[at.Line-1])
	head := string(row[:min(max(at.Col-1, 0), len(row))])
	if strings.HasSuffix(strings.TrimRight(head, " "), "-") {
		return "- "
	}
	if m := lastKey.FindStringSubmatch(head); m != nil {
		return m[1] + ": "
	}
	return ""
}
