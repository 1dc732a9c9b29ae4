package cli

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	pots "sipsum/internal/bench"
	"sipsum/internal/sheet"
	"sipsum/internal/web"
	"sipsum/internal/workshop"
)

func servedKitchen(tb testing.TB) (kitchen, []byte) {
	tb.Helper()
	dir := tb.TempDir()
	text, err := os.ReadFile("testdata/twelve.yaml")
	require.NoError(tb, err)
	folder, err := workshop.Open(dir, mostText)
	require.NoError(tb, err)
	tb.Cleanup(func() { folder.Close() })
	a := &app{streams: Streams{Out: io.Discard, Err: io.Discard, Env: func(string) string { return "" }}}
	a.options.db, a.options.seed = filepath.Join(dir, "x.db"), 1
	k, err := newKitchen(context.Background(), a, folder)
	require.NoError(tb, err)
	tb.Cleanup(func() { a.db.Close() })
	return k, text
}

// A change in a drink of twelve pots, as it is answered while somebody works at it: at most 50 ms.
func BenchmarkChangeOfTwelvePots(b *testing.B) {
	k, text := servedKitchen(b)
	ask := web.Ask{Draws: 200, Claims: true, Typed: true}
	_, err := k.Sheet(context.Background(), web.File{Name: "twelve.yaml", Text: text}, ask)
	require.NoError(b, err)
	for i := 0; b.Loop(); i++ {
		s, err := k.Sheet(context.Background(), web.File{Name: "twelve.yaml", Text: changed(text, i)}, ask)
		if err != nil {
			b.Fatal(err)
		}
		sheet.FrontOf(s)
	}
}

// What is calculated while somebody works is what the whole calculation with as many draws gives, whatever was kept from before:
// amounts of the glass, of a pot and of a step, a reading, another food, and back.
func TestASketchIsTheWholeCalculation(t *testing.T) {
	k, text := servedKitchen(t)
	ctx := context.Background()
	front := func(text string, ask web.Ask) string {
		s, err := k.Sheet(ctx, web.File{Name: "twelve.yaml", Text: []byte(text)}, ask)
		require.NoError(t, err)
		f := sheet.FrontOf(s)
		all := fmt.Sprintln(pots.FiguresOf(&f), s.Assay.Chemistry.PHMeter.Summary, s.Assay.Chemistry.Brix.Summary)
		for _, c := range s.Assay.PerServing {
			all += fmt.Sprintln(c.Constituent.ID, c.Summary, c.UpTo, c.Coverage)
		}
		for _, r := range s.Assay.Readings {
			all += fmt.Sprintln(r)
		}
		for _, x := range s.Said {
			all += fmt.Sprintln(x.InShort())
		}
		return all
	}
	now := string(text)
	for _, change := range [][2]string{
		{"", ""}, {"- 20 g lemon cordial", "- 31.5 g ± 1 g lemon cordial"}, {"120 g core:lemon-juice", "90 g core:lemon-juice"}, {"collect: 170 g, through: cloth", "collect: 160 g, through: cloth"},
		{"brix: 49.0 ± 0.2", "brix: 52.0 ± 0.2"}, {"50 g core:vinegar-cider", "50 g core:orange-juice"}, {"- 31.5 g ± 1 g lemon", "- 20 g lemon"}, {"72 g ± 2 g espresso", "7.2 cl espresso"},
	} {
		now = strings.Replace(now, change[0], change[1], 1)
		sketch := front(now, web.Ask{Draws: 200, Claims: true, Typed: true})
		assert.Equal(t, front(now, web.Ask{Draws: 200, Claims: true}), sketch, change[1])
	}
	for i := range 2 * mostPlans {
		_, err := k.Sheet(ctx, web.File{Name: fmt.Sprint(i, ".yaml"), Text: []byte("drink: x\nserves: 1\nbuild: [9 g core:honey]\n")}, web.Ask{Draws: 20, Typed: true})
		require.NoError(t, err)
	}
	assert.Len(t, k.live.plans, mostPlans)
}

// Many at once get each their own answer.
func TestSketchesOfOneDrinkAtOnce(t *testing.T) {
	k, _ := servedKitchen(t)
	var all sync.WaitGroup
	for i := range 12 {
		all.Go(func() {
			text := fmt.Sprintf("drink: x\nserves: 1\nbuild: [%d g core:sugar-white, 90 g core:water-pure]\n", 5+i)
			s, err := k.Sheet(context.Background(), web.File{Name: "x.yaml", Text: []byte(text)}, web.Ask{Draws: 20, Typed: true})
			if assert.NoError(t, err) {
				assert.InDelta(t, float64(95+i), s.Assay.Mass.Mean, 1e-9)
			}
		})
	}
	all.Wait()
}

// changed is the drink with another amount in its glass.
func changed(text []byte, i int) []byte {
	return []byte(strings.Replace(string(text), "- 20 g lemon cordial", fmt.Sprintf("- %d g lemon cordial", 20+i%30), 1))
}
