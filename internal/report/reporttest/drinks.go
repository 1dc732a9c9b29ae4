package reporttest

import (
	"context"
	"fmt"
	"io/fs"
	"path"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/evidence"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// HostileDrink is a drink whose names are those of Hostile.
func HostileDrink() string {
	text := fmt.Sprintf("drink: %q\nserves: 2\nrules: [eu, us]\nfoods:\n  odd: {name: %q, per: 100 g, values: {SUGAR: 12 g, CAFFN: 30 mg}, source: \"invented\"}\ncomponents:\n", Markup+" "+Table, Formula)
	var build []string
	for _, name := range Hostile {
		if name == Ordered || name == Sums { // the grammar keeps digits for amounts
			name = "x " + name
		}
		name = strings.ReplaceAll(name, ":", "")
		text += fmt.Sprintf("  %q:\n    ingredients: [\"40 g own:odd\", \"20 g core:milk-whole\"]\n", name)
		build = append(build, fmt.Sprintf("%q", "30 g "+name))
	}
	return text + "build: [" + strings.Join(build, ", ") + "]\n"
}

// Read gives the sheet of a drink under rules; none: its own.
func Read(t testing.TB, text string, rules ...string) *sheet.Sheet {
	t.Helper()
	d, faults := drink.Parse("test.drink.yaml", []byte(text), nil)
	a, err := assaytest.Run(context.Background(), d, faults, assaytest.Core(t), assaytest.Options{Draws: 100, Seed: 1, Want: assay.Want{Figures: evidence.Constituents(d)}})
	require.NoError(t, err)
	none := func(string, string) (source.Work, bool) { return source.Work{}, false }
	s, err := sheet.Build("sipsum test", a, nil, none, rules)
	require.NoError(t, err)
	return s
}

// Demos gives the sheets of the demo drinks by name.
func Demos(t testing.TB, rules ...string) map[string]*sheet.Sheet {
	t.Helper()
	names, err := fs.Glob(data.FS, "demo/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, names)
	all := map[string]*sheet.Sheet{}
	for _, name := range names {
		text, err := data.FS.ReadFile(name)
		require.NoError(t, err)
		all[strings.TrimSuffix(path.Base(name), ".yaml")] = Read(t, string(text), rules...)
	}
	return all
}

// Menu gives drinks side by side.
func Menu(rules []string, drinks ...*sheet.Sheet) *sheet.Menu {
	m := &sheet.Menu{Program: "sipsum test", Seed: 1, Draws: 100, Rules: rules}
	for _, s := range drinks {
		m.Drinks = append(m.Drinks, s.Offer("test.drink.yaml"))
	}
	return m
}

// Leaves gives every leaf of a drink by its kind.
func Leaves(s *sheet.Sheet) map[string]*sheet.Leaf {
	return map[string]*sheet.Leaf{
		"card": s.CardLeaf(), "guest": s.GuestLeaf(), "stage": s.StageLeaf(), "allergens": s.AllergensLeaf(),
		"menu": Menu(s.Rules, s, s, s).Leaf(4),
	}
}
