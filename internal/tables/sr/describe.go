package sr

import (
	"fmt"
	"slices"
	"strings"

	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// The fields of FOOD_DES.
const (
	foodFields   = 14
	fieldGroup   = 1
	fieldName    = 2
	fieldCommon  = 4
	fieldMaker   = 5
	fieldRefuse  = 7
	fieldShare   = 8
	fieldLatin   = 9
	fieldFactors = 10 // nitrogen, then energy of protein, fat, carbohydrate
)

// describe makes a food of a line of FOOD_DES, without values.
func (r *reader) describe(in *lines) *food.Food {
	f := table.NewFood(r.tableID, in.text(0))
	f.Names = []food.Name{{Language: "en", Text: in.text(fieldName)}}
	f.PublisherGroup = r.groups[in.text(fieldGroup)]
	f.Note = noteOf(in)
	f.Group = r.rules.Group(f.PublisherGroup, f.Name())
	if common := in.text(fieldCommon); common != "" {
		f.Names = append(f.Names, food.Name{Language: "en", Text: common})
	}
	if latin := in.text(fieldLatin); latin != "" {
		f.Names = append(f.Names, food.Name{Language: "la", Text: latin})
	}
	return f
}

// noteOf gathers what FOOD_DES says besides.
func noteOf(in *lines) string {
	var notes []string
	if refuse := in.text(fieldRefuse); refuse != "" {
		notes = append(notes, "Refuse: "+refuse)
	}
	if maker := in.text(fieldMaker); maker != "" {
		notes = append(notes, "Manufacturer: "+maker)
	}
	for i, of := range []string{"Nitrogen to protein", "Energy of protein, kcal/g", "Energy of fat, kcal/g", "Energy of carbohydrate, kcal/g"} {
		if factor := in.text(fieldFactors + i); factor != "" {
			notes = append(notes, of+": "+factor)
		}
	}
	return strings.Join(notes, "\n")
}

// edible gives the edible share; None if the refuse is blank.
func edible(in *lines) (float64, error) {
	refuse, stated, err := in.number(fieldShare)
	switch {
	case err != nil || !stated:
		return food.None, err
	case refuse > 100:
		return food.None, in.wrongField(fieldShare, fmt.Sprintf("refuse of %s %% is more than all", in.field(fieldShare)), again)
	}
	return 1 - refuse/100, nil
}

// portionOf reads a line of WEIGHT: NDB_No Seq Amount Msre_Desc Gm_Wgt
// Num_Data_Pts Std_Dev. The mass is that of the whole amount, so an amount other
// than one belongs to the name.
func portionOf(in *lines) (food.Portion, error) {
	none := food.Portion{}
	if _, stated, err := in.number(2); err != nil || !stated {
		return none, orEmpty(in, 2, err)
	}
	grams, stated, err := in.number(4)
	if err != nil || !stated {
		return none, orEmpty(in, 4, err)
	}
	sd, err := scaled(in, 6, 1)
	if err != nil {
		return none, err
	}
	name := in.text(3)
	if amount := in.text(2); amount != "1" {
		name = amount + " " + name
	}
	return food.Portion{Name: name, Grams: grams, SD: sd}, nil
}

// named gives a measure that the publisher lists twice for a food, with two
// masses, a name of its own.
func named(p food.Portion, others []food.Portion) food.Portion {
	name := p.Name
	for n := 2; slices.ContainsFunc(others, func(o food.Portion) bool { return o.Name == p.Name }); n++ {
		p.Name = fmt.Sprintf("%s~%d", name, n)
	}
	return p
}

func orEmpty(in *lines, field int, err error) error {
	if err != nil {
		return err
	}
	return in.wrongField(field, "the number is empty", again)
}

// footnoteOf reads a line of FOOTNOTE: NDB_No Footnt_No Footnt_Typ Nutr_No
// Footnt_Txt.
func footnoteOf(in *lines) string {
	if number := in.text(3); number != "" {
		return "On " + number + ": " + in.text(4)
	}
	return in.text(4)
}
