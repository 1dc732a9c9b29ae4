package food_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// Nobody measures quinine in a lemon: what is added on purpose is assumed to be missing in a
// food of a known group whose name does not speak of it, and is unknown in all others, up to
// what the law allows (21 CFR 172.575: 83 ppm of quinine; Directive 94/35/EC: 300 mg/l of
// sucralose; Regulation (EU) 2019/934: 400 mg/l of sulphur dioxide).
func TestWhatIsAddedOnPurpose(t *testing.T) {
	const none = -1
	for _, c := range []struct {
		name, group string
		id          constituent.ID
		most        float64 // mg/kg; none: surely not there; None: nothing bounds it
	}{
		{"Lemon, fresh", "citrus fruit", "quinine", none},
		{"Cola", "soft drink", "quinine", none},
		{"Indian tonic water", "soft drink", "quinine", 85},
		{"Bitter lemon", "soft drink", "quinine", 85},
		{"Quinquina cordial", "syrup", "quinine", food.None},
		{"Cocktail bitters", "spirit", "quinine", 300},
		{"Cola", "soft drink", "allulose", none},
		{"Indian tonic water", "", "quinine", food.None},
		{"Cola", "", "ASPM", food.None},
		{"Cola", "soft drink", "sucralose", none},
		{"Cola, diet", "soft drink", "sucralose", 300},
		{"Cola, low calorie, with aspartame", "soft drink", "ASPM", food.None},
		{"Coffee, light roast", "coffee bean", "ASPM", none},
		{"Red wine", "wine", "SO2", 400},
		{"Sake", "wine", "SO2", none},
		{"Apricot", "fruit", "SO2", none},
		{"Apricots, dried", "fruit", "SO2", 2000},
		{"Blueberry", "fruit", "SO2", 10},
		{"Apricot, sulphured", "nut", "SO2", food.None},
		{"Milk, whole", "milk", "SO2", none},
		{"Pastis", "spirit", "glycyrrhizin", 530},
		{"Gin", "spirit", "glycyrrhizin", none},
		{"Liquorice root", "spice", "glycyrrhizin", food.None},
	} {
		cell := food.Enter(sr("x", c.name, c.group, map[constituent.ID]float64{"WATER": 90}), nil).Cell(c.id)
		switch {
		case c.most == none:
			assert.True(t, cell.Known && cell.Amount == 0 && cell.State == estimate.Assumed, "%s of %s (%s)", c.id, c.name, c.group)
		case !food.Stated(c.most):
			assert.False(t, cell.Known || food.Stated(cell.Bound), "%s of %s (%s)", c.id, c.name, c.group)
		default:
			assert.False(t, cell.Known, "%s of %s (%s)", c.id, c.name, c.group)
			assert.InDelta(t, c.most, cell.Bound*1e6, 1e-6, "%s of %s (%s)", c.id, c.name, c.group)
			assert.Contains(t, cell.Why, "no more is allowed in "+c.group)
		}
	}
}

// Theanine and theaflavins are of tea, hydroxycitric acid of hibiscus and garcinia: a food
// whose name speaks of neither is assumed to be without, any other is not, nor one without a
// group. What plants make is not in plain milk.
func TestWhatIsOfOnePlantAlone(t *testing.T) {
	for _, c := range []struct {
		name, group string
		id          constituent.ID
		zero        bool
	}{
		{"Orange juice", "fruit juice", "theanine", true},
		{"Coffee, brewed", "coffee drink", "theaflavins", true},
		{"Tea, oolong, brewed", "tea drink", "theanine", false},
		{"Iced tea, lemon", "soft drink", "theaflavins", false},
		{"Gyokuro", "tea drink", "theanine", false},
		{"Orange juice", "", "theanine", false},
		{"Orange juice", "fruit juice", "hibiscus-acid", true},
		{"Hibiscus flower, dried", "herb", "hibiscus-acid", false},
		{"Roselle syrup", "syrup", "hibiscus-acid", false},
		{"Kokum, dried", "fruit", "hibiscus-acid", false},
		{"Milk, whole", "milk", "CATEC", true},
		{"Milk, chocolate", "milk", "CATEC", false},
		{"Apple juice", "fruit juice", "CATEC", false},
		{"Citric acid", "acid", "GALLAC", true},
	} {
		cell := food.Enter(sr("x", c.name, c.group, map[constituent.ID]float64{"WATER": 90}), nil).Cell(c.id)
		assert.Equal(t, c.zero, cell.Known && cell.Amount == 0 && cell.State == estimate.Assumed, "%s of %s (%s)", c.id, c.name, c.group)
	}
}

// A soft drink that is fermented alive holds alcohol that nobody has stated: 18 kombuchas held
// 1.12 to 2.00 % vol. (Talebi et al. 2017, Food Analytical Methods 10:4062), × 0.789 g/ml.
func TestAlcoholOfAFermentedSoftDrink(t *testing.T) {
	enter := func(name string) food.Cell {
		return food.Enter(sr("x", name, "soft drink", map[constituent.ID]float64{"WATER": 90}), nil).Cell("ALC")
	}
	cola, kombucha := enter("Cola"), enter("Kombucha, ginger")
	assert.True(t, cola.Known && cola.Amount == 0)
	assert.False(t, kombucha.Known)
	assert.InDelta(t, 0.0158, kombucha.Bound, 1e-9)
}
