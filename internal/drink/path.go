package drink

import (
	"strconv"
	"strings"
)

// occurrences counts the lines or steps of one list that have the same name, so
// that each has a path of its own. A path holds no position: a line that is
// added elsewhere in the list changes no other path, and so no other draw.
type occurrences map[string]int

// path gives "owner/name", and "owner/name~2" for the second of that name.
func (o occurrences) path(owner, name string) string {
	o[name]++
	path := owner + "/" + escape(name)
	if o[name] > 1 {
		path += "~" + strconv.Itoa(o[name])
	}
	return path
}

// escape keeps the two signs of a path out of names.
func escape(name string) string {
	return strings.NewReplacer("~", "~t", "/", "~s").Replace(name)
}

// Owner gives the component in whose lists a path is; "build", "finish" and "garnish" are
// the drink's own.
func Owner(path string) string {
	owner, _, _ := strings.Cut(path, "/")
	return strings.NewReplacer("~s", "/", "~t", "~").Replace(owner)
}
