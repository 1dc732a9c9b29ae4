package textreport_test

import (
	"bytes"
	"context"
	"io"
	"io/fs"
	"regexp"
	"strings"
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

// The figures of the demo drinks are tested elsewhere; here every page of them
// has to keep its form, and to cite nothing that it does not list.
func TestDemoDrinks(t *testing.T) {
	release, err := core.Format.Open(context.Background(), "", "")
	require.NoError(t, err)
	lib := library{}
	for f, err := range release.Foods {
		require.NoError(t, err)
		lib[f.ID] = f
	}
	works := func(_, id string) (source.Work, bool) {
		for _, w := range release.Works {
			if w.ID == id {
				return w, true
			}
		}
		return source.Work{}, false
	}
	demos, err := fs.Glob(data.FS, "demo/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, demos)
	for _, name := range demos {
		text, err := data.FS.ReadFile(name)
		require.NoError(t, err)
		d, faults := drink.Parse(name, text, nil)
		a, err := assaytest.Run(context.Background(), d, faults, lib, assaytest.Options{Draws: 200, Seed: 1, Want: assay.Want{Figures: evidence.Constituents(d)}})
		require.NoError(t, err, name)
		s, err := sheet.Build("sipsum test", a, []source.Table{release.Table}, works, []string{"eu", "us"})
		require.NoError(t, err, name)
		for view, write := range map[string]func(io.Writer, *sheet.Sheet, textreport.Style) error{
			"assay": textreport.Assay, "evidence": textreport.Evidence, "sheet": textreport.Sheet,
			"card": textreport.Cards, "allergens": textreport.Allergens,
		} {
			var out bytes.Buffer
			require.NoError(t, write(&out, s, textreport.Style{}), name)
			assert.Contains(t, out.String(), d.Name, name, view)
			for line := range strings.Lines(out.String()) {
				assert.LessOrEqual(t, textreport.Width(strings.TrimSuffix(line, "\n")), 80, "%s, %s: %q", name, view, line)
			}
			assert.Empty(t, never.FindAllString(out.String(), -1), "%s, %s", name, view)
		}
	}
	for id, f := range lib {
		var out bytes.Buffer
		require.NoError(t, textreport.Food(&out, f, release.Columns, func(id string) (source.Work, bool) { return works("core", id) }, textreport.Style{}))
		for line := range strings.Lines(out.String()) {
			assert.LessOrEqual(t, textreport.Width(strings.TrimSuffix(line, "\n")), 80, "%s: %q", id, line)
		}
	}
}
