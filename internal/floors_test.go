// Package internal_test holds the house plan: which floor each package lives
// on. An import may only point to a lower floor.
package internal_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const module = "sipsum/"

// floors is the house plan, ground floor first. A package that is not in it may
// not exist.
var floors = [][]string{
	{"data", "internal/fail", "internal/estimate", "internal/source", "internal/clean", "internal/optimise", "internal/inorder"},
	{"internal/embedded"},
	{"internal/unit", "internal/phrase", "internal/spelling", "internal/typeset", "internal/tasting"},
	{"internal/constituent"},
	{"internal/food", "internal/solution", "internal/acid", "internal/pack", "internal/benchlog"},
	{"internal/drink", "internal/claim", "internal/ledger", "internal/note", "internal/speech", "internal/tables/table", "internal/tables/difference", "internal/workshop", "internal/burette"},
	{"internal/liquid", "internal/amount", "internal/ledger/ledgertest"},
	{"internal/composition", "internal/acidity", "internal/untold", "internal/meter"},
	{"internal/chemistry", "internal/curdling", "internal/titration", "internal/dosing", "internal/figure"},
	{"internal/prep", "internal/foaming"},
	{"internal/recipe", "internal/reading"},
	{"internal/drivers", "internal/taste", "internal/ladder", "internal/minutes", "internal/proof"},
	{"internal/assay"},
	{"internal/allergen", "internal/evidence", "internal/claims", "internal/contrast", "internal/across"},
	{"internal/caution", "internal/label", "internal/nutritionclaim", "internal/ingredientlist", "internal/houserules", "internal/batch", "internal/fit"},
	{"internal/invent", "internal/rewrite"},
	{"internal/sheet"},
	{"internal/store", "internal/tables/core", "internal/tables/sr", "internal/tables/ifct", "internal/tables/ciqual", "internal/tables/swiss", "internal/tables/generic", "internal/tables/cofid", "internal/tables/cnf", "internal/tables/fdc", "internal/tables/fndds", "internal/tables/stfcj", "internal/tables/afcd", "internal/tables/tablestest", "internal/report/json", "internal/report/text", "internal/report/svg", "internal/report/markdown", "internal/report/csv", "internal/bench"},
	{"internal/tables", "internal/assay/assaytest", "internal/batch/batchtest", "internal/report/html"},
	{"internal/sweep", "internal/report/reporttest", "internal/web"},
	{"internal/cli"},
	{"cmd/sipsum", "scripts/rebuildcore", "scripts/corereport", "scripts/spread", "scripts/kins", "scripts/download", "scripts/bench", "scripts/mutants"},
}

// only lists modules that one room alone may import.
var only = map[string][]string{
	"github.com/jmoiron/sqlx":     {"internal/store"},
	"modernc.org/sqlite":          {"internal/store"},
	"github.com/spf13/cobra":      {"internal/cli"},
	"github.com/goccy/go-yaml":    {"internal/drink"},
	"github.com/xuri/excelize/v2": {"internal/tables/tablestest"},
	"net/http":                    {"scripts/download", "internal/web", "internal/cli"},
	"html/template":               {"internal/report/html", "internal/web"},
	"database/sql":                {"internal/store"},
}

// pure lists the packages that may not touch the world: no files, no clock, no
// processes.
var pure = []string{
	"internal/fail", "internal/embedded", "internal/unit", "internal/estimate", "internal/source", "internal/constituent", "internal/food",
	"internal/solution", "internal/acid", "internal/curdling", "internal/foaming", "internal/drink", "internal/ledger", "internal/prep", "internal/assay", "internal/allergen",
	"internal/phrase", "internal/spelling", "internal/note", "internal/liquid", "internal/amount", "internal/composition", "internal/acidity", "internal/chemistry", "internal/titration", "internal/burette",
	"internal/recipe", "internal/reading", "internal/untold", "internal/drivers", "internal/dosing",
	"internal/evidence", "internal/contrast", "internal/ladder", "internal/claim", "internal/claims", "internal/caution", "internal/label", "internal/nutritionclaim", "internal/ingredientlist", "internal/houserules", "internal/sheet", "internal/report/json", "internal/report/text",
	"internal/taste", "internal/speech", "internal/pack", "internal/clean", "internal/typeset", "internal/report/html", "internal/report/svg", "internal/report/markdown", "internal/report/csv",
	"internal/tables/difference", "internal/tasting", "internal/batch", "internal/optimise", "internal/inorder", "internal/fit", "internal/invent", "internal/across", "internal/figure", "internal/minutes", "internal/proof", "internal/rewrite", "internal/bench", "internal/meter", "internal/benchlog",
}

var worldly = []string{"os", "os/exec", "net", "net/http", "syscall", "time"}

type goPackage struct {
	ImportPath string
	Imports    []string
}

func packages(t *testing.T) []goPackage {
	t.Helper()
	out, err := exec.Command("go", "list", "-json=ImportPath,Imports", module+"...").Output()
	require.NoError(t, err)
	var all []goPackage
	for decoder := json.NewDecoder(bytes.NewReader(out)); ; {
		var p goPackage
		err := decoder.Decode(&p)
		if errors.Is(err, io.EOF) {
			return all
		}
		require.NoError(t, err)
		p.ImportPath = strings.TrimPrefix(p.ImportPath, module)
		all = append(all, p)
	}
}

func TestImportsPointDownwards(t *testing.T) {
	floor := map[string]int{}
	for i, rooms := range floors {
		for _, room := range rooms {
			floor[room] = i
		}
	}
	for _, p := range packages(t) {
		if p.ImportPath == "internal" {
			continue // this test
		}
		here, planned := floor[p.ImportPath]
		if !assert.True(t, planned, "%s is not in the house plan", p.ImportPath) {
			continue
		}
		for _, path := range p.Imports {
			room, ours := strings.CutPrefix(path, module)
			if there, planned := floor[room]; ours && planned {
				assert.Less(t, there, here, "%s may not import %s", p.ImportPath, room)
			}
		}
	}
}

func TestModulesStayInTheirRooms(t *testing.T) {
	for _, p := range packages(t) {
		for _, path := range p.Imports {
			for owner, rooms := range only {
				if path == owner || strings.HasPrefix(path, owner+"/") {
					assert.Contains(t, rooms, p.ImportPath, "only %v may import %s", rooms, owner)
				}
			}
		}
	}
}

func TestDomainIsPure(t *testing.T) {
	for _, p := range packages(t) {
		for _, room := range pure {
			if p.ImportPath != room {
				continue
			}
			for _, path := range p.Imports {
				assert.NotContains(t, worldly, path, "%s is a pure package", room)
			}
		}
	}
}
