package assay_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/assay/assaytest"
	"sipsum/internal/note"
)

// A drink that is colder than it freezes is no liquid: 12 g of sugar in 88 g of water freeze at −0.77 °C
// (Clarke 2004, The Science of Ice Cream, figure 2.8), vodka of 33.3 % by mass at −23.6 (CRC Handbook: 32 %
// at −22.44, 34 % at −24.27).
func TestADrinkBelowItsFreezingPointIsSaidToBeIce(t *testing.T) {
	lib := assaytest.Core(t)
	for _, x := range []struct {
		build string
		at    float64
		ice   bool
	}{
		{"12 g core:sugar-white, 88 g core:water-pure", -0.5, false}, {"12 g core:sugar-white, 88 g core:water-pure", -1, true},
		{"100 g core:vodka-40", -22, false}, {"100 g core:vodka-40", -25, true}, {"100 g core:orange-juice", 4, false},
	} {
		a := assaytest.Assay(t, lib, fmt.Sprintf("drink: Cold\nserves: 1\nat: %g °C\nbuild: [%s]\n", x.at, x.build), 50)
		said := slices.ContainsFunc(a.Notes, func(n note.Note) bool { return n.Kind == "ice" && strings.Contains(n.Text, "part of it is ice") })
		assert.Equal(t, x.ice, said, "%s at %g °C", x.build, x.at)
	}
}
