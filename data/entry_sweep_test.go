package data_test

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/tables"
)

// Every food of every published table, as it enters the ledger: 100 g are 100 g, no part
// is more than its total or below nothing, and no bound is above that of its total or
// above 100 g.
func TestEveryPublishedFoodEntersSound(t *testing.T) {
	shared := os.Getenv("SIPSUM_SHARED")
	folders := map[string]string{"core": ""}
	for format, folder := range map[string]string{"sr": "sr28", "ciqual": "ciqual2020", "swiss": "swiss53", "stfcj": "japan2020", "ifct": "ifct2017", "afcd": "afcd2"} {
		if shared != "" {
			folders[format] = filepath.Join(shared, "tables", folder)
		}
	}
	for name, folder := range folders {
		t.Run(name, func(t *testing.T) {
			format, ok := tables.Find(name)
			require.True(t, ok)
			release, err := format.Open(context.Background(), folder, "")
			require.NoError(t, err)
			foods, contradict, over := 0, 0, 0
			for f, err := range release.Foods {
				require.NoError(t, err)
				p := food.Enter(f, nil)
				foods++
				sound(t, p)
				for _, n := range p.Notes {
					switch n.Kind {
					case "contradiction":
						contradict++
					case "over total":
						over++
					}
				}
			}
			t.Logf("%d foods, %d contradict themselves, %d totals gave way to their parts", foods, contradict, over)
			assert.Positive(t, foods)
		})
	}
}

func sound(t *testing.T, p *food.Profile) {
	t.Helper()
	const exact = 1e-9
	sum := 0.0
	for _, leaf := range constituent.Sums().Leaves(constituent.Mass) {
		cell := p.Cells[leaf.Order]
		sum += cell.Amount
		if cell.Amount < 0 || math.IsNaN(cell.Amount) || math.IsNaN(cell.SD) {
			t.Errorf("%s: %s is %g ± %g", p.Food.ID, leaf.ID, cell.Amount, cell.SD)
		}
	}
	if sum != 0 && math.Abs(sum-1) > exact {
		t.Errorf("%s: 100 g are %.9g g", p.Food.ID, 100*sum)
	}
	for _, c := range constituent.All() {
		cell := p.Cells[c.Order]
		if c.Parent == "" {
			continue
		}
		total := p.Cell(c.Parent)
		if cell.Amount > total.Amount+exact {
			t.Errorf("%s: %g g of %s in %g g of %s", p.Food.ID, 100*cell.Amount, c.ID, 100*total.Amount, c.Parent)
		}
		if cell.Known || !food.Stated(cell.Bound) {
			continue
		}
		if !total.Known && food.Stated(total.Bound) && cell.Bound > total.Bound+exact {
			t.Errorf("%s: %s up to %g g, %s up to %g g", p.Food.ID, c.ID, 100*cell.Bound, c.Parent, 100*total.Bound)
		}
		if cell.Bound > 1+exact {
			t.Errorf("%s: %s up to %g g in 100 g: %s", p.Food.ID, c.ID, 100*cell.Bound, cell.Why)
		}
	}
}
