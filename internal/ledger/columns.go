package ledger

import (
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// Columns is the set of constituents that a run carries: those that at least
// one of its foods has.
type Columns struct {
	List  []*constituent.Constituent
	at    []int   // by vocabulary order; -1 if not carried
	below [][]int // by vocabulary order: what adds up to it
}

// NewColumns collects the columns that the profiles need, and those of the
// constituents that steps will make.
func NewColumns(profiles []*food.Profile, made ...constituent.ID) *Columns {
	c := &Columns{at: make([]int, len(constituent.All()))}
	for _, k := range constituent.All() {
		c.at[k.Order] = -1
		if k.InLedger() && (k.ID == constituent.Water || slices.Contains(made, k.ID) || anyHas(profiles, k)) {
			c.at[k.Order] = len(c.List)
			c.List = append(c.List, k)
		}
	}
	c.below = make([][]int, len(c.at))
	for _, k := range constituent.All() {
		c.below[k.Order] = c.sumOf(k)
	}
	return c
}

func anyHas(profiles []*food.Profile, c *constituent.Constituent) bool {
	for _, p := range profiles {
		if cell := p.Cells[c.Order]; cell.Known && cell.Amount != 0 {
			return true
		}
	}
	return false
}

// At gives the column of a constituent, or -1 if the run does not carry it.
func (c *Columns) At(id constituent.ID) int { return c.at[constituent.Must(id).Order] }

// Below gives the columns that add up to a constituent: its own, or the leaves
// of a parent.
func (c *Columns) Below(id constituent.ID) []int { return c.below[constituent.Must(id).Order] }

func (c *Columns) sumOf(k *constituent.Constituent) []int {
	if k.Kind != constituent.Parent {
		if at := c.at[k.Order]; at >= 0 {
			return []int{at}
		}
		return nil
	}
	var cols []int
	for _, leaf := range constituent.Sums().Leaves(k.ID) {
		if at := c.at[leaf.Order]; at >= 0 {
			cols = append(cols, at)
		}
	}
	return cols
}

// mass gives the columns that are part of the mass: all but the riders.
func (c *Columns) mass() []int { return c.Below(constituent.Mass) }
