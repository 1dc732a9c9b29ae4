package internal_test

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// planRow is a row of the table of floors in DEVELOPERS.md, top floor first: number, rooms, what
// lives there.
var planRow = regexp.MustCompile(`(?m)^\| (\d+) \| (.+?) \| (.+) \|$`)

// The house plan that a reader sees is the one that the tests hold: a floor a row, its
// rooms in the order of floors. What lives there is prose.
func TestPlanOfTheHouseIsPrinted(t *testing.T) {
	text, err := os.ReadFile("../DEVELOPERS.md")
	require.NoError(t, err)
	rows := planRow.FindAllStringSubmatch(string(text), -1)
	prose := map[string]string{} // by room
	var printed []string
	for _, row := range rows {
		printed = append(printed, "| "+row[1]+" | "+row[2]+" |")
		for room := range strings.SplitSeq(row[2], ", ") {
			prose[room] = row[3]
		}
	}
	var want, paste []string
	for floor := len(floors) - 1; floor >= 0; floor-- {
		var rooms []string
		lives := "…"
		for _, room := range floors[floor] {
			room = "`" + strings.TrimPrefix(room, "internal/") + "`"
			rooms = append(rooms, room)
			if said, ok := prose[room]; ok && lives == "…" {
				lives = said
			}
		}
		row := fmt.Sprintf("| %d | %s |", floor, strings.Join(rooms, ", "))
		want, paste = append(want, row), append(paste, row+" "+lives+" |")
	}
	if !slices.Equal(want, printed) {
		t.Errorf("the table of floors in DEVELOPERS.md is not floors of floors_test.go: paste this into it, and say in its last column what lives there\n\n%s\n", strings.Join(paste, "\n"))
	}
}

// Every package says in its doc.go what it is, and where it ends.
func TestEveryPackageSaysItsLimits(t *testing.T) {
	for _, p := range packages(t) {
		if p.ImportPath == "internal" {
			continue // these tests
		}
		name := filepath.Join("..", filepath.FromSlash(p.ImportPath), "doc.go")
		text, err := os.ReadFile(name)
		if !assert.NoError(t, err, "%s wants a doc.go", p.ImportPath) {
			continue
		}
		assert.Regexp(t, `(?s)^// (Package|Command|[A-Z])\w* .*\n// # Limits\n//\n// \S.*\npackage `, string(text), "%s: doc.go begins with what the package is, and has a section # Limits", p.ImportPath)
	}
}
