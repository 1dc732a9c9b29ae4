package generic

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
	"sipsum/internal/unit"
)

// line is a row of the table with what is needed to read it.
type line struct {
	*reader
	cells table.Cells
	row   []string
}

// text gives the cell of a column; empty beyond the end of a row of a workbook.
func (l *line) text(c column) string {
	if c.at >= len(l.row) {
		return ""
	}
	return strings.TrimSpace(l.row[c.at])
}

// food reads the row.
func (l *line) food(seen map[string]bool) (*food.Food, error) {
	if len(l.row) != l.width && !(l.workbook() && len(l.row) < l.width) {
		return nil, l.cells.Wrong(len(l.row)-1, fmt.Sprintf("%d cells where the header has %d", len(l.row), l.width))
	}
	f := table.NewFood(l.tableID, "")
	var notes []string
	for _, c := range l.mapping.columns {
		if err := l.describe(f, c, &notes); err != nil {
			return nil, err
		}
	}
	code := l.column(roleCode)
	switch {
	case f.ID.Code == "" || seen[f.ID.Code]:
		return nil, l.cells.Wrong(code.at, fmt.Sprintf("code %.40q is empty or stands twice", f.ID.Code))
	case len(f.Names) == 0:
		return nil, l.cells.Wrong(l.column(roleName).at, "the food has no name")
	}
	seen[f.ID.Code] = true
	left, err := l.values(f)
	if err != nil {
		return nil, err
	}
	if len(left) > 0 {
		notes = append(notes, "Given per 100 ml and no density is stated, so left out: "+strings.Join(left, ", ")+".")
	}
	f.Note = strings.Join(notes, "\n")
	return f, nil
}

// column gives the first column of a role that the mapping file must have.
func (l *line) column(r role) column {
	for _, c := range l.mapping.columns {
		if c.role == r {
			return c
		}
	}
	return column{}
}

// describe takes over a cell that is not a value.
func (l *line) describe(f *food.Food, c column, notes *[]string) error {
	text := l.text(c)
	if text == "" {
		return nil
	}
	switch c.role {
	case roleCode:
		f.ID.Code = text
	case roleName:
		f.Names = append(f.Names, food.Name{Language: c.as, Text: text})
	case roleGroup:
		if f.PublisherGroup = text; l.groups[text] {
			f.Group = text
		}
	case roleNote:
		*notes = append(*notes, text)
	case roleDensity, roleEdible:
		if l.mapping.marks[text] == roleMissing {
			return nil
		}
		x, ok := l.number(text)
		switch {
		case !ok:
			return l.cells.Wrong(c.at, fmt.Sprintf("%.40q is not a number", text))
		case c.role == roleEdible && x*c.factor > 1, c.role == roleDensity && !unit.LimitOf("density of a food", "g/ml").Holds(x):
			return l.cells.Wrong(c.at, fmt.Sprintf("%.40q cannot be the %s of a food", text, c.role))
		case c.role == roleEdible:
			f.Edible = x * c.factor
		default:
			f.Density = food.Density{GramsPerMl: x, SD: food.None, Source: work}
		}
	}
	return nil
}

// values reads the values of the row and refuses what no food can have; left are the columns that need a density.
func (l *line) values(f *food.Food) (left []string, err error) {
	for i, c := range l.mapping.columns {
		if c.role != roleValue {
			continue
		}
		v, ok, err := l.value(i, c)
		switch {
		case err != nil:
			return nil, err
		case !ok:
		case !c.perMl:
			f.Values = append(f.Values, v)
		case food.Stated(f.Density.GramsPerMl):
			f.Values = append(f.Values, scaled(v, 1/f.Density.GramsPerMl))
		default:
			left = append(left, c.name)
			continue
		}
		if ok {
			if what := table.CannotBe(f.Values[len(f.Values)-1]); what != "" {
				return nil, l.cells.Wrong(c.at, fmt.Sprintf("%.40q %s", l.text(c), what))
			}
		}
	}
	return left, nil
}

// value reads a cell and its spread; ok is false for a cell that says nothing.
func (l *line) value(i int, c column) (v food.Value, ok bool, err error) {
	v = table.NewValue(l.id(c), work, "")
	text := l.text(c)
	x, isNumber := l.number(text)
	switch mark := l.mapping.marks[text]; {
	case text == "" || mark == roleMissing:
		return v, false, nil
	case mark == roleTrace:
		v.State, v.Limit = estimate.Trace, l.digits.Half(i)*c.factor
		return v, true, nil
	case mark == roleUnknown:
		v.State = estimate.Unknown
		return v, true, nil
	case isNumber:
		v.Amount, v.State = x*c.factor, l.mapping.state
	default:
		limit, ok := l.limit(text)
		if !ok {
			return v, false, l.cells.Wrong(c.at, fmt.Sprintf("%.40q is neither a number nor a mark of the mapping file", text))
		}
		v.State, v.Limit = estimate.Below, limit*c.factor
		return v, true, nil
	}
	if v.Amount == 0 {
		v.State = estimate.Calculated
	}
	return v, true, l.spread(&v, c)
}

// limit reads a limit such as "< 0.5".
func (l *line) limit(text string) (float64, bool) {
	for _, mark := range l.mapping.below {
		if rest, ok := strings.CutPrefix(text, mark); ok {
			x, ok := l.number(rest)
			return x, ok && x > 0
		}
	}
	return 0, false
}

// spread adds the standard deviation and the number of samples.
func (l *line) spread(v *food.Value, c column) error {
	if c.sd >= 0 {
		of := l.mapping.columns[c.sd]
		if text := l.text(of); text != "" && l.mapping.marks[text] != roleMissing {
			x, ok := l.number(text)
			if !ok {
				return l.cells.Wrong(of.at, fmt.Sprintf("%.40q is not a number", text))
			}
			v.SD = x * c.factor
		}
	}
	if c.samples >= 0 {
		of := l.mapping.columns[c.samples]
		if text := l.text(of); text != "" && l.mapping.marks[text] != roleMissing {
			x, ok := l.number(text)
			if !ok || x != math.Trunc(x) || x > math.MaxInt32 {
				return l.cells.Wrong(of.at, fmt.Sprintf("%.40q is not a whole number", text))
			}
			v.N = int(x)
		}
	}
	if c.sd >= 0 && food.Stated(v.SD) && v.SD > (v.Amount+l.half(l.text(c))*c.factor)*math.Sqrt(float64(max(v.N, 1))) {
		of := l.mapping.columns[c.sd]
		return l.cells.Wrong(of.at, fmt.Sprintf("%.40q is more than the standard deviation of %s can be", l.text(of), samples(v.N)))
	}
	return nil
}

// samples names how many samples have a mean. Of n samples, none below zero, the standard
// deviation is at most √n times the mean: where all are zero but one.
func samples(n int) string {
	if n == 0 {
		return "such a mean (say in a column n of how many samples)"
	}
	return fmt.Sprintf("%d samples with such a mean", n)
}

// half gives half of the last digit of a number as it is printed.
func (l *line) half(text string) float64 {
	_, decimals, _ := strings.Cut(strings.Replace(text, ",", ".", 1), ".")
	return math.Pow(10, -float64(len(decimals))) / 2
}

// scaled multiplies all figures of a value.
func scaled(v food.Value, by float64) food.Value {
	v.Amount, v.SD, v.Limit = v.Amount*by, v.SD*by, v.Limit*by
	if v.State == estimate.Measured {
		v.State = estimate.Calculated
	}
	return v
}
