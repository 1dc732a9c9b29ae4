package generic

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
)

// TestEveryRoleIsExplained: the list of formats names every role of a mapping
// file.
func TestEveryRoleIsExplained(t *testing.T) {
	for _, roles := range []map[role]bool{about, marks, ofColumns} {
		for r := range roles {
			assert.Regexp(t, regexp.MustCompile(`\b`+string(r)+`\b`), needs, r)
		}
	}
}

// TestRolesDoNotOverlap: a role is of one kind.
func TestRolesDoNotOverlap(t *testing.T) {
	seen := map[role]bool{}
	for _, roles := range []map[role]bool{about, marks, ofColumns} {
		for r := range roles {
			assert.False(t, seen[r], r)
			seen[r] = true
		}
	}
	for r, needed := range about {
		assert.Equal(t, needed, r == roleFile || r == roleTitle || r == roleEdition || r == roleLicence, r)
	}
}
