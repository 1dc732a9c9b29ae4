package textreport_test

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"io/fs"
	"os"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/drink"
	"sipsum/internal/evidence"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/report/text"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
	"sipsum/internal/tables/core"
)

// library is the core table in memory.
type library map[food.ID]*food.Food

func (l library) Food(_ context.Context, id food.ID) (*food.Food, error) {
	if f, ok := l[id]; ok {
		return f, nil
	}
	return nil, fail.New(fail.Wrong, "no food "+id.String(), "")
}

func (l library) Named(context.Context, string) (food.ID, bool, error) { return food.ID{}, false, nil }
func (l library) Near(context.Context, string) []string                { return nil }

// never matches what must not stand on any page.
var never = regexp.MustCompile(`NaN|\bInf\b|\x1b|-other|(?i)free from`)

// pages are those about a drink.
var pages = map[string]func(io.Writer, *sheet.Sheet, textreport.Style) error{
	"assay": textreport.Assay, "evidence": textreport.Evidence, "sheet": textreport.Sheet, "card": textreport.Cards,
	"card --explain": textreport.CardWorking, "allergens": textreport.Allergens, "log": textreport.Log,
}

// published is the core table, and what it cites.
type publishedTable struct {
	library
	columns []food.Column
	table   source.Table
	works   func(id string) (source.Work, bool)
}

var coreTable = sync.OnceValue(func() publishedTable {
	release, err := core.Format.Open(context.Background(), "", "")
	if err != nil {
		panic(err)
	}
	out := publishedTable{library{}, release.Columns, release.Table, func(id string) (source.Work, bool) {
		for _, w := range release.Works {
			if w.ID == id {
				return w, true
			}
		}
		return source.Work{}, false
	}}
	for f, err := range release.Foods {
		if err != nil {
			panic(err)
		}
		out.library[f.ID] = f
	}
	return out
})

// demos are the demo drinks, and drinks of testdata that have more of what a page can tell.
var demos = sync.OnceValue(func() map[string]*sheet.Sheet {
	list := map[string]*sheet.Sheet{}
	read := func(fsys fs.FS, pattern string) {
		names, err := fs.Glob(fsys, pattern)
		if err != nil || len(names) == 0 {
			panic("no drinks: " + pattern)
		}
		for _, name := range names {
			text, err := fs.ReadFile(fsys, name)
			if err != nil {
				panic(err)
			}
			list[name] = sheetOf(name, string(text))
		}
	}
	read(data.FS, "demo/*.yaml")
	read(os.DirFS("../../../testdata/drinks"), "designs/*.yaml")
	return list
})

// sheetOf makes the sheet of a drink of the core table.
func sheetOf(name, text string) *sheet.Sheet {
	published := coreTable()
	d, faults := drink.Parse(name, []byte(text), nil)
	a, err := assaytest.Run(context.Background(), d, faults, published.library, assaytest.Options{Draws: 200, Seed: 1, Want: assay.Want{Figures: evidence.Constituents(d)}})
	if err != nil {
		panic(name + ": " + err.Error())
	}
	s, err := sheet.Build("sipsum test", a, []source.Table{published.table}, func(_, id string) (source.Work, bool) { return published.works(id) }, []string{"eu", "us"})
	if err != nil {
		panic(name + ": " + err.Error())
	}
	return s
}

// printed is a page of so many columns.
func printed(t *testing.T, page func(io.Writer, *sheet.Sheet, textreport.Style) error, s *sheet.Sheet, columns int) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, page(&out, s, textreport.Style{Width: columns}))
	return out.String()
}

// The figures of the demo drinks are tested elsewhere; here every page of them
// has to keep its form, and to cite nothing that it does not list.
func TestDemoDrinks(t *testing.T) {
	for name, s := range demos() {
		for view, page := range pages {
			text := printed(t, page, s, 0)
			assert.Contains(t, text, s.Assay.Drink.Name, name, view)
			assert.Empty(t, never.FindAllString(text, -1), "%s, %s", name, view)
			narrow(t, name+", "+view, text, 80)
		}
	}
	published := coreTable()
	for id, f := range published.library {
		var out bytes.Buffer
		require.NoError(t, textreport.Food(&out, f, published.columns, published.works, textreport.Style{}))
		narrow(t, id.String(), out.String(), 80)
	}
}

// narrow holds a page to its width.
func narrow(t *testing.T, what, text string, columns int) {
	t.Helper()
	for line := range strings.Lines(text) {
		assert.LessOrEqual(t, textreport.Width(strings.TrimSuffix(line, "\n")), columns, "%s: %q", what, line)
	}
}

// torn is a figure that the end of a line has torn: a number without its unit, its bound, its
// interval. The rows of a titration begin with a unit.
var torn = regexp.MustCompile(`(?m)(\d\n *(%|g|kg|mg|µg|ml|l|kJ|kcal|°C|°Bx|g/ml|g/l|h)([ ,.;:)]|$)|[≥≤<>±×]\n *\d|\bup\n *to [\d−]|\bup to\n|\d to\n *[\d−]|\d\n *to \d|%\n *\(\d|\bpH\n *\d|[\d]–\n|\n *–\d|\d\n *\d{3} k|\babout\n *\d)`)

// On a telephone as on a wide screen: no line is wider than it, and no figure is torn.
func TestPagesOfEveryWidth(t *testing.T) {
	lemon := coreTable().library[food.ID{Table: "core", Code: "lemon-juice"}]
	for columns := 40; columns <= 120; columns += 4 {
		for name, s := range demos() {
			for view, page := range pages {
				text, what := printed(t, page, s, columns), fmt.Sprintf("%s, %s, %d columns", name, view, columns)
				narrow(t, what, text, columns)
				assert.Empty(t, torn.FindAllString(text, -1), what)
			}
		}
		var out bytes.Buffer
		require.NoError(t, textreport.Food(&out, lemon, nil, coreTable().works, textreport.Style{Width: columns}))
		narrow(t, "food show", out.String(), columns)
		assert.Empty(t, torn.FindAllString(out.String(), -1), "food show, %d columns", columns)
	}
	for asked, want := range map[int]int{0: 80, 1: 40, 1000: 120} {
		head, _, _ := strings.Cut(printed(t, textreport.Evidence, demos()["demo/garden-tide.yaml"], asked), "\n")
		assert.Equal(t, want, textreport.Width(head), "%d columns", asked)
	}
}
