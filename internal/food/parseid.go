package food

import (
	"regexp"
	"strings"
)

// tablePattern is what a table may be called: it stands before the colon of food ids.
var tablePattern = regexp.MustCompile(`^[a-z][a-z0-9-]{0,31}$`)

// IsTableID tells whether a table may be called so.
func IsTableID(id string) bool { return tablePattern.MatchString(id) }

// ParseID reads "table:code", the table in any case. What stands before the colon of a text that
// is no id, "to 40 g core:espresso", could be the name of no table.
func ParseID(text string) (id ID, ok bool) {
	table, code, coded := strings.Cut(text, ":")
	id = ID{Table: strings.ToLower(strings.TrimSpace(table)), Code: strings.TrimSpace(code)}
	return id, coded && id.Code != "" && IsTableID(id.Table)
}
