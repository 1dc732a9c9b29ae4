package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"path/filepath"
	"strconv"
	"strings"
)

// shuffled puts the places in the order of the draw.
func shuffled(all []place, seed uint64) []place {
	row := make([]place, len(all))
	for i, from := range rand.New(rand.NewPCG(seed, 0)).Perm(len(all)) {
		row[i] = all[from]
	}
	return row
}

// plan is the test that knows which packages are pure.
const plan = "internal/floors_test.go"

// domain gives the folders of the domain packages: the pure ones, without renderers and
// readers of tables.
func domain(root string) ([]string, error) {
	file, err := parser.ParseFile(token.NewFileSet(), filepath.Join(root, plan), nil, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	var folders []string
	ast.Inspect(file, func(n ast.Node) bool {
		list, ok := n.(*ast.ValueSpec)
		if !ok || list.Names[0].Name != "pure" {
			return true
		}
		ast.Inspect(list, func(n ast.Node) bool {
			if text, ok := n.(*ast.BasicLit); ok {
				folder, err := strconv.Unquote(text.Value)
				if err == nil && !strings.HasPrefix(folder, "internal/report/") && !strings.HasPrefix(folder, "internal/tables/") {
					folders = append(folders, folder)
				}
			}
			return true
		})
		return false
	})
	if len(folders) == 0 {
		return nil, fmt.Errorf("%s has no list of pure packages", plan)
	}
	return folders, nil
}
