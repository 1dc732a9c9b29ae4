package food

import (
	"sync"

	"sipsum/internal/embedded"
)

// Group is a food group of data/groups.csv.
type Group struct {
	Name        string
	Liquid      bool // its foods pour
	Solid       bool // none of its foods pours; neither is true of a group that has both
	Assumed     bool // its tables leave out acids and ions that it holds
	TakesUpAcid bool // its protein is native to pH 6 to 7 and takes up acid in a sour drink
	Water       bool // water and what is dissolved in it as it comes
	OfAnimals   bool // what the Food Code calls animal foods: no table lifts control of time and temperature
	Curdles     bool // its casein comes down with acid or rennet
	Coffee, Tea bool // bean or leaf, and what is brewed of it
	Dose        bool // bean or leaf, of which a brew takes what dissolves
	Infused     bool // brewed elsewhere: what water has drawn from bean or leaf
	Juice       bool // pressed: what boils down of it is concentrated juice
	InDrinks    bool // what drinks are made of as a rule: listed before other foods
	Alcoholic   bool // what its foods do not state may be alcohol
	Grown       bool // what is grown so, or pressed of it, and made of nothing else: a pot of such a name holds it or is misnamed

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
			Name: row.Text("group"), Liquid: row.Text("state") == "liquid", Solid: row.Text("state") == "solid",
			Assumed: row.Text("assumed") == "yes", TakesUpAcid: row.Text("takes_up_acid") == "yes",
			Water: row.Text("water") == "yes", OfAnimals: row.Text("of_animals") == "yes", Curdles: row.Text("curdles") == "yes",
			Coffee: row.Text("brew") == "coffee", Tea: row.Text("brew") == "tea", Dose: row.Text("dose") == "yes", Infused: row.Text("infused") == "yes", Juice: row.Text("juice") == "yes",
			InDrinks: row.Text("in_drinks") == "yes", Grown: row.Text("grown") == "yes", Alcoholic: row.Text("alcoholic") == "yes",
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

// Facts gives what is true of a food's group: nothing, if it has none.
func (f *Food) Facts() Group {
	g, _ := GroupOf(f.Group)
	return g
}

// GroupsThat names the groups of which something is true, in the order of the file.
func GroupsThat(is func(Group) bool) []string {
	var names []string
	for _, g := range Groups() {
		if is(g) {
			names = append(names, g.Name)
		}
	}
	return names
}
