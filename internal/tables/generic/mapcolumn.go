package generic

import (
	"fmt"
	"strings"
	"unicode"

	"sipsum/internal/constituent"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// column is a row about a column.
type column struct {
	role  role
	name  string
	as    string
	unit  string
	per   string
	place fail.Place

	id          constituent.ID // of a value; empty for one that is kept
	number      string         // under which it is kept, or known
	factor      float64
	known       bool // id is of the vocabulary
	perMl       bool
	sd, samples int // of a value: the columns with its spread and count, -1 if none
	at          int // where it stands in a row
}

// check checks a row about a column.
func (m *mapping) check(c *column, several bool, faults *fail.List) {
	if c.name == "" {
		faults.Add(c.place, "name it as the header of the table does", "%s names no column", c.role)
	}
	for _, other := range m.columns {
		if other.name == c.name {
			faults.Add(c.place, "keep one of the two rows", "column %.60q has a row already, on line %d", c.name, other.place.Line)
		} else if other.role == c.role && !several {
			faults.Add(c.place, "keep one of the two rows", "%s has a column already, on line %d", c.role, other.place.Line)
		}
	}
	switch c.role {
	case roleValue:
		m.checkValue(c, faults)
	case roleDensity:
		if c.unit != "g/ml" {
			faults.Add(c.place, "give it in g/ml", "density in %.40q", c.unit)
		}
	case roleEdible:
		c.factor = map[string]float64{"%": 0.01, "share": 1}[c.unit]
		if c.factor == 0 {
			faults.Add(c.place, "the unit is % or share", "edible share in %.40q", c.unit)
		}
	case roleName:
		if c.as == "" {
			c.as = "en"
		}
	}
}

// checkValue finds the constituent and the factor from the printed unit.
func (m *mapping) checkValue(c *column, faults *fail.List) {
	switch c.per {
	case "", "100 g":
	case "100 ml":
		c.perMl = true
	default:
		faults.Add(c.place, "write 100 g or 100 ml", "per %.40q", c.per)
	}
	if c.unit == "" {
		faults.Add(c.place, "write the unit that the table prints", "column %.60q has no unit", c.name)
	}
	c.factor = 1
	if c.as == "keep" {
		c.number = slug(c.name)
	} else if known, ok := constituent.Find(c.as); !ok {
		faults.Add(c.place, "use an id of the vocabulary, such as CITAC, or keep", "%.40q is not a constituent", c.as)
	} else {
		c.id, c.number, c.known = known.ID, slug(c.name), true
		factor, ok := unit.Convert(strings.Replace(c.unit, "ug", "µg", 1), known.Unit)
		if !ok {
			faults.Add(c.place, "give it in g, mg or µg, or in the unit that sipsum keeps", "%.20q cannot become %s, the unit of %s", c.unit, known.Unit, known.ID)
		}
		c.factor = factor
	}
	if c.number == "" {
		faults.Add(c.place, "rename it in the table", "column %.60q has no letter or digit", c.name)
	}
	for _, other := range m.columns {
		if other.role != roleValue {
			continue
		}
		if c.known && other.id == c.id {
			faults.Add(c.place, "keep one, and keep the other under its own name", "columns %.60q and %.60q are both %s", other.name, c.name, c.id)
		} else if other.number == c.number {
			faults.Add(c.place, "rename one in the table", "columns %.60q and %.60q cannot be told apart", other.name, c.name)
		}
	}
}

// slug writes a name in small letters and digits with dashes between.
func slug(text string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }), "-")
}

// describe lists names for a message.
func describe(names []string) string {
	const most = 12
	if len(names) > most {
		return fmt.Sprintf("%.40q and %d more", names[:most], len(names)-most)
	}
	return fmt.Sprintf("%.40q", names)
}
