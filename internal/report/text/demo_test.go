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
	"sipsum/internal/constituent"
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
var never = regexp.MustCompile(`NaN|\bInf\b|\x1b|[A-Z]-other|(?i)free from`)

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
	works := map[string]source.Work{}
	for _, w := range release.Works {
		works[w.ID] = w
	}
	out := publishedTable{library{}, release.Columns, release.Table, func(id string) (source.Work, bool) {
		w, ok := works[id]
		return w, ok
	}}
	for f, err := range release.Foods {
		if err != nil {
			panic(err)
		}
		out.library[f.ID] = f
	}
	return out
})

// demos are the demo drinks, and drinks that have more of what a page can tell.
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
	for name, text := range own {
		list[name] = sheetOf(name, text)
	}
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
	for _, columns := range []int{40, 46, 54, 60, 69, 77, 80, 97, 120} {
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

// own are drinks of own foods, of packs, of kin, of a laboratory, of gas, of spirit and milk: what
// the demo drinks have nothing of.
var own = map[string]string{
	"pack": `
drink: "House Flat"
serves: 1
foods:
  house-oat: {name: "Oat drink", group: plant drink, per: 100 ml, density: 1.03 g/ml, declared: eu, source: "the pack",
    values: {energy: 190 kJ, fat: 0 g, carbohydrate: 5.6 g, sugars: 3.1 g, protein: 0.8 g, salt: 0.1 g}}
  house-beans: {name: "House beans", group: coffee bean, fill: core:coffee-roasted-arabica, per: 100 g,
    coffee: {species: arabica, process: washed, roast: {loss: 15.5 %}, origin: "the hill", lab: {values: {CAFFN: 1250 mg ± 40 mg}, source: "report 7"}}}
components:
  shot: {ingredients: [18 g own:house-beans, 60 g core:water-brew], steps: [{brew: {out: 38 g, strength: 9.5 %}}]}
build: [36 g shot, 120 g own:house-oat]
`,
	"kin": `
drink: "Kin Folk"
serves: 1
foods:
  quince: {name: "Quince juice, pressed", group: fruit juice, per: 100 g, values: {WATER: 86 g, SUGAR: 10 g, OA: 1.2 g}, source: "a laboratory"}
  bergamot: {name: "Bergamot juice", group: citrus juice, per: 100 g, fill: core:lemon-juice, values: {WATER: 90 g, carbohydrate: 3 g, OA: 5 g, SUGAR: 2.5 g}, source: "a laboratory"}
build: [30 g own:quince, 20 g own:bergamot, 100 g core:oat-drink, 40 g core:espresso]
`,
	"gas": `
drink: "Tea Static"
serves: 1
at: 4 °C
components:
  tea: {ingredients: [600 g core:water-brew], steps: [{steep: {ingredients: [12 g core:tea-leaf-black], at: 95 °C, for: 5 min, collect: 560 g}}], keeps: 2 days at 4 °C}
  peach: {ingredients: [200 g core:peach, 40 g core:honey, 2 g core:citric-acid], steps: [{press: {collect: 150 g, through: metal}}], measured: {brix: 20, ph: 3.2}}
build: [150 g tea, 30 g peach, 15 g core:yuzu-juice]
finish: [{carbonate: {bottle: 0.5 l, charge: 8 g, at: 4 °C}}]
garnish: [{food: "core:orange-peel", amount: 2 g, eaten: true}]
`,
	"spirit": `
drink: "Milk Lantern"
serves: 2
components:
  washed rum: {ingredients: [200 g core:rum-40, 60 g core:milk-whole, 25 g core:lime-juice], steps: [{curdle: {collect: 240 g, by: acid}}], keeps: 9 days at 8 °C}
build: [60 g washed rum, 20 g core:maple-syrup, 80 g core:espresso]
`,
}

// A tag is for who types it: wherever a page prints one, its word stands beside it.
func TestNoPageSpeaksInTags(t *testing.T) {
	var ids []string
	for _, c := range constituent.All() {
		if id := string(c.ID); len(id) > 2 && id == strings.ToUpper(id) || id == "OA" || strings.HasSuffix(id, "-other") {
			ids = append(ids, regexp.QuoteMeta(id))
		}
	}
	require.NotEmpty(t, ids)
	tags := regexp.MustCompile(`(^|[^(\w-])(` + strings.Join(ids, "|") + `)\b`)
	words := func(what, text string) {
		text, _, _ = strings.Cut(text, "\nSources\n") // titles are as they were published
		assert.Empty(t, tags.FindAllString(text, -1), what)
	}
	for name, s := range demos() {
		for view, page := range pages {
			words(name+", "+view, printed(t, page, s, 0))
		}
	}
	published := coreTable()
	for id, f := range published.library {
		var out bytes.Buffer
		require.NoError(t, textreport.Food(&out, f, published.columns, published.works, textreport.Style{}))
		words(id.String(), out.String())
	}
}
