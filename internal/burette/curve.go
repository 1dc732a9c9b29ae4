package burette

import (
	"cmp"
	"errors"
	"slices"
)

// Point is one reading of a titration.
type Point struct {
	Base  float64 // mol of strong base added so far, as strong as it is said to be; below zero: acid
	Off   float64 // standard deviation of Base by the reading of its volume, mol
	Water float64 // kg of water that came with it
	PH    float64 // as the meter showed it
}

// errFew means that a curve has fewer points than tell anything of the meter beside the acids.
var errFew = errors.New("the curve has too few points to tell acids apart")

// errOne means that nothing in the liquid is uncertain that a titration could tell.
var errOne = errors.New("nothing is uncertain that a titration could tell")

// counted gives the points that tell something, as the base rises: in whatever order they were
// read, they tell the same.
func counted(points []Point) []Point {
	list := slices.DeleteFunc(slices.Clone(points), func(p Point) bool { return p.PH > rowOf("highest pH").value })
	slices.SortFunc(list, func(a, b Point) int {
		return cmp.Or(cmp.Compare(a.Base, b.Base), cmp.Compare(a.PH, b.PH), cmp.Compare(a.Off, b.Off), cmp.Compare(a.Water, b.Water))
	})
	return list
}

// neutral is the pH at which a glass electrode shows no voltage: its slope turns there.
const neutral = 7.0

// TrueOf gives the pH of what a meter shows, with its zero and its slope.
func TrueOf(shown, zero, slope float64) float64 {
	return neutral + (shown-neutral-zero)/slope
}
