package fdc

import (
	"context"
	"fmt"
	"math"
	"strconv"
	"strings"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
	"sipsum/internal/unit"
)

// column is a nutrient and where its values go.
type column struct {
	id     constituent.ID
	number string  // the publisher's id, for notes
	factor float64 // from the printed unit to the unit stored
	limit  float64 // half of the last decimal of the column, in the unit stored; None if nobody says
}

// cannotBe says what no food can have of the nutrient, printed as amount.
func (c column) cannotBe(amount float64) string {
	v := table.NewValue(c.id, "", "")
	v.Amount = amount * c.factor
	return table.CannotBe(v)
}

// columns is the nutrients of a release in the order of nutrient.csv.
type columns struct {
	tableID  string
	mapping  *table.ColumnMap
	decimals map[string]int
	list     []column
	foods    []food.Column
	byID     map[string]int // the publisher's id: place in the list
	near     [4096]uint16   // small ids: one more than the place in the list
	byNumber map[string]int // the older nutrient number, by which the rows of survey foods name nutrients
}

func newColumns(tableID string) *columns {
	mapping := table.ReadMap(name)
	c := &columns{tableID: tableID, mapping: mapping, decimals: map[string]int{}, byID: map[string]int{}, byNumber: map[string]int{}}
	for _, row := range embedded.Rows("maps/fdc_decimals.csv") {
		c.decimals[row.Text("column")] = row.Whole("decimals")
	}
	return c
}

// read reads nutrient.csv.
func (c *columns) read(ctx context.Context, f files) error {
	in, err := f.open(nutrientFile, headers[nutrientFile]...)
	if err != nil {
		return err
	}
	defer in.close()
	id, called, unitName, number := in.column("id"), in.column("name"), in.column("unit_name"), in.column("nutrient_nbr")
	return in.each(ctx, func() error {
		n, err := in.key(id)
		if err != nil {
			return err
		}
		text, err := in.texts(called, unitName, number)
		if err != nil {
			return err
		}
		code := strconv.FormatUint(uint64(n), 10)
		if _, twice := c.byID[code]; twice {
			return in.wrong(id, fmt.Sprintf("nutrient %s stands twice", code))
		}
		if what := c.add(code, text[2], text[0], text[1]); what != "" {
			return in.wrong(unitName, what)
		}
		return nil
	})
}

// learn adds the nutrient of a row of values if it is new and the row says what
// it is.
func (c *columns) learn(in valueRows) error {
	if _, ok := c.find(in.record[in.nutrient]); ok || in.nutrientName < 0 || in.nutrientUnit < 0 {
		return nil // an unknown one is refused when the values are read
	}
	n, err := in.key(in.nutrient)
	if err != nil {
		return err
	}
	text, err := in.texts(in.nutrientName, in.nutrientUnit)
	if err != nil {
		return err
	}
	if what := c.add(strconv.FormatUint(uint64(n), 10), "", text[0], text[1]); what != "" {
		return in.wrong(in.nutrientUnit, what)
	}
	return nil
}

// add adds a nutrient; it says what is wrong with it. A nutrient that the map
// does not know is kept under its id. The factor comes from the unit that the
// release itself prints, since units of nutrients have changed between releases.
func (c *columns) add(code, number, called, printed string) (what string) {
	if called == "" || printed == "" {
		return fmt.Sprintf("nutrient %s has no name or no unit", code)
	}
	row, ok := c.mapping.Find(code)
	if !ok {
		row = table.Mapping{Column: code, Fate: table.Kept, Factor: 1}
	}
	col := column{id: row.ID(c.tableID), number: code, factor: 1, limit: food.None}
	if row.Fate == table.Mapped {
		factor, ok := unit.Convert(plainUnit(printed), row.Constituent.Unit)
		if !ok {
			return fmt.Sprintf("nutrient %s is in %.20q, which cannot become %s", code, printed, row.Constituent.Unit)
		}
		col.factor = factor
	}
	decimals, ok := c.decimals[code]
	if ok {
		col.limit = math.Pow10(-decimals) / 2 * col.factor
	} else {
		decimals = -1
	}
	place := len(c.list)
	c.list = append(c.list, col)
	c.foods = append(c.foods, food.Column{
		ID: col.id, Number: code, Name: strings.Clone(called), Unit: strings.Clone(printed), Decimals: decimals, Constituent: row.Fate == table.Mapped,
	})
	c.byID[code] = place
	if n, _ := wholeOf(code); n < uint64(len(c.near)) && place < math.MaxUint16 {
		c.near[n] = uint16(place + 1)
	}
	if _, taken := c.byNumber[number]; number != "" && !taken {
		c.byNumber[strings.Clone(number)] = place
	}
	return ""
}

// find gives the place of the nutrient that a row of values names: by id, else
// by the older number.
func (c *columns) find(name string) (int, bool) {
	n, whole := wholeOf(name)
	if whole && n < uint64(len(c.near)) && c.near[n] > 0 {
		return int(c.near[n]) - 1, true
	}
	if place, ok := c.byID[name]; ok {
		return place, true
	}
	if place, ok := c.byNumber[name]; ok {
		return place, true
	}
	place, ok := c.byNumber[strconv.FormatUint(n, 10)] // "203.0"
	return place, ok && whole
}

// plainUnit writes a unit as the vocabulary does. Two units tell what an amount
// is equivalent to; the mass is the same.
func plainUnit(printed string) string {
	switch printed {
	case "G", "g":
		return "g"
	case "MG", "mg", "MG_ATE":
		return "mg"
	case "UG", "ug", "µg", "MCG_RE":
		return "µg"
	case "KCAL", "kcal":
		return "kcal"
	case "PH":
		return "pH"
	}
	return printed
}
