package afcd

import (
	"context"
	"fmt"
	"io"
	"maps"
	"regexp"
	"slices"
	"strings"

	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// reader is what the stream of foods needs.
type reader struct {
	tableID string
	file    string // for messages
	rules   *table.Groups
	solids  sheet
	columns []column
	liquids map[string]liquid
	more    map[string]*details // by code
}

// prepare reads the smaller sheets whole, a few thousand rows, and the header of
// the foods per 100 g.
func (r *reader) prepare(ctx context.Context, found *release) error {
	r.solids = found.solids
	rows, err := r.solids.open()
	if err != nil {
		return err
	}
	defer rows.Close()
	if r.columns, err = match(rows); err != nil {
		return err
	}
	if r.liquids, err = readLiquids(ctx, found.liquids); err != nil {
		return err
	}
	r.more, err = readDetails(ctx, found)
	return err
}

// foods is the stream.
func (r *reader) foods(ctx context.Context, yield func(*food.Food, error) bool) {
	rows, err := r.solids.open()
	if err != nil {
		yield(nil, err)
		return
	}
	defer rows.Close()
	seen := map[string]bool{}
	table.Stream(ctx, yield, func() (*food.Food, error) {
		err := rows.Next()
		if err == io.EOF {
			if end := r.strays(seen); end != nil {
				err = end
			}
		}
		if err != nil {
			return nil, err
		}
		return r.food(rows, seen)
	})
}

// strays makes sure that there are foods, and that those per 100 mL are among
// them.
func (r *reader) strays(seen map[string]bool) error {
	if len(seen) == 0 {
		return fail.At(fail.Wrong, fail.Place{File: r.file}, "has no food", again)
	}
	for _, code := range slices.Sorted(maps.Keys(r.liquids)) {
		if !seen[code] {
			return fail.At(fail.Wrong, r.liquids[code].at, fmt.Sprintf("food %s is not on the sheet of foods per 100 g", code), again)
		}
	}
	return nil
}

var codeShape = regexp.MustCompile(`^F[0-9]{6}$`)

// codeOf reads the key of a row, which must be new.
func codeOf(rows *table.HeadedSheet, column string, seen map[string]bool) (string, error) {
	code := rows.Text(column)
	if !codeShape.MatchString(code) || seen[code] {
		return "", rows.Wrong(column, fmt.Sprintf("food key %.40q is not F and six digits, or stands twice", code))
	}
	seen[code] = true
	return code, nil
}

// food reads the current row.
func (r *reader) food(rows *table.HeadedSheet, seen map[string]bool) (*food.Food, error) {
	h := headings(rows)
	code, err := codeOf(rows, h.is(keyColumn), seen)
	if err != nil {
		return nil, err
	}
	f := table.NewFood(r.tableID, code)
	text := table.OneLine(rows.Text(h.is(nameColumn)))
	if text == "" {
		return nil, rows.Wrong(h.is(nameColumn), "the food has no name")
	}
	f.Names = []food.Name{{Language: "en", Text: text}}
	f.PublisherGroup = groupNumber(rows.Text(h.is(classColumn)))
	f.Group = r.rules.Group(f.PublisherGroup, f.Name())
	printed, err := r.figures(rows)
	if err != nil {
		return nil, err
	}
	var notes []string
	f.Values, notes = r.values(printed, f.PublisherGroup)
	if l, found := r.liquids[code]; found {
		var disagree []string
		f.Density, disagree = l.density(printed)
		notes = append(notes, disagree...)
	}
	if d := r.more[code]; d != nil {
		notes = append(notes, d.describe(f)...)
	}
	if refused := refuse(f); refused != "" {
		notes = append(notes, refused)
	}
	f.Note = strings.Join(notes, "; ")
	return f, nil
}

// figures reads what the current row prints per 100 g, by column.
func (r *reader) figures(rows *table.HeadedSheet) (map[string]float64, error) {
	printed := map[string]float64{}
	for _, c := range r.columns {
		x, err := rows.Number(c.at)
		if err == nil && x > largest {
			err = rows.Wrong(c.at, fmt.Sprintf("%.40q is too large", rows.Text(c.at)))
		}
		if what := table.CannotBe(c.value(r.tableID, x, "")); err == nil && what != "" {
			err = rows.Wrong(c.at, fmt.Sprintf("%.40q %s", rows.Text(c.at), what))
		}
		if err != nil {
			return nil, err
		}
		if food.Stated(x) {
			printed[c.Column] = x
		}
	}
	return printed, nil
}

// values makes values of the figures of a food, in the order of the columns.
func (r *reader) values(printed map[string]float64, group string) (values []food.Value, notes []string) {
	unknown := unknownFat(printed)
	if unknown {
		notes = append(notes, "all fatty acids are printed as 0 beside a fat above 0: taken as unknown")
	}
	values = make([]food.Value, 0, len(printed))
	for _, c := range r.columns {
		x, there := printed[c.Column]
		if !there {
			continue
		}
		v := c.value(r.tableID, x, group)
		if unknown && c.zero == zeroFatty && x == 0 {
			v.State, v.Limit, v.Ref = estimate.Unknown, food.None, c.Column+", printed 0"
		}
		values = append(values, v)
	}
	return values, notes
}

// groupNumber reads the number of a group, which a spreadsheet may have given a
// blank or decimals.
func groupNumber(text string) string {
	number, _, _ := strings.Cut(strings.TrimSpace(text), ".")
	return number
}
