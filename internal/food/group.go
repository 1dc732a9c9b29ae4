package food

import (
	"sync"

	"sipsum/internal/embedded"
)

// Group is a food group of data/groups.csv.
type Group struct {
	Name        string
	Liquid      bool
	Assumed     bool // its tables leave out acids and ions that it holds
	TakesUpAcid bool // its protein is native to pH 6 to 7 and takes up acid in a sour drink

	// PHLow and PHHigh are between what pH of such foods has been published, by PHSource;
	// both are 0 where a food of the group may have any.
	PHLow, PHHigh float64
	PHSource      string
}

// Groups lists the closed list of food groups in the order of the file.
var Groups = sync.OnceValue(func() []Group {
	var list []Group
	for _, row := range embedded.Rows("groups.csv") {
		g := Group{
			Name: row.Text("group"), Liquid: row.Text("state") == "liquid",
			Assumed: row.Text("assumed") == "yes", TakesUpAcid: row.Text("takes_up_acid") == "yes",
			PHSource: row.Text("ph_source"),
		}
		g.PHLow, _ = row.Optional("ph_low")
		g.PHHigh, _ = row.Optional("ph_high")
		if (g.PHHigh > 0) != (g.PHSource != "") || g.PHLow > g.PHHigh {
			row.Fail("a pH has a low and a high end and a source")
		}
		list = append(list, g)
	}
	return list
})

var groupsByName = sync.OnceValue(func() map[string]Group {
	byName := map[string]Group{}
	for _, g := range Groups() {
		byName[g.Name] = g
	}
	return byName
})

// GroupOf finds a food group by its name. A food without one has a group of which
// nothing is known.
func GroupOf(name string) (Group, bool) {
	g, ok := groupsByName()[name]
	return g, ok
}
