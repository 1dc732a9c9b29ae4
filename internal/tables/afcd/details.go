package afcd

import (
	"context"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// details are what the release's other files say of a food.
type details struct {
	notes    []string
	names    []food.Name
	gravity  float64 // None if not stated
	printed  string  // the gravity as printed
	edible   float64 // None if not stated
	portions []food.Portion
	recipe   []string // ingredients with their weights
}

// noted are the columns of the food details that go into the note, by a word of
// their name, in the order of the note.
var noted = []struct{ word, label string }{
	{"derivation", "derivation"}, {"nitrogen factor", "nitrogen factor"}, {"fat factor", "fat factor"},
	{"description", "description"}, {"sampling", "sampling"},
}

// readDetails reads the food details, measures and recipes that are there.
func readDetails(ctx context.Context, found *release) (map[string]*details, error) {
	all := map[string]*details{}
	of := func(code string) *details {
		if all[code] == nil {
			all[code] = &details{gravity: food.None, edible: food.None}
		}
		return all[code]
	}
	for _, part := range []struct {
		sheet
		read func(*table.HeadedSheet, *details) error
	}{{found.details, readFood}, {found.measures, readMeasure}, {found.recipes, readIngredient}} {
		if !part.there() {
			continue
		}
		if err := part.each(ctx, func(rows *table.HeadedSheet, code string) error { return part.read(rows, of(code)) }); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// each reads the rows of a sheet that name a food.
func (s sheet) each(ctx context.Context, use func(rows *table.HeadedSheet, code string) error) error {
	rows, err := s.open()
	if err != nil {
		return err
	}
	defer rows.Close()
	key := headings(rows).is(keyColumn)
	for {
		if err := rows.Next(); err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
		if err := ctx.Err(); err != nil {
			return err
		}
		code := strings.TrimSpace(rows.Text(key))
		if !codeShape.MatchString(code) {
			return rows.Wrong(key, fmt.Sprintf("food key %.40q is not F and six digits", code))
		}
		if err := use(rows, code); err != nil {
			return err
		}
	}
}

// readFood reads a row of the food details.
func readFood(rows *table.HeadedSheet, d *details) error {
	h := headings(rows)
	for _, n := range noted {
		if column := h.with(n.word); column != "" && rows.Text(column) != "" && rows.Text(column) != "0" { // a recipe has the factors 0
			d.notes = append(d.notes, n.label+": "+table.OneLine(rows.Text(column)))
		}
	}
	for _, n := range []struct{ word, language string }{{"common name", "en"}, {"scientific name", "la"}} {
		if column := h.with(n.word); column != "" && table.OneLine(rows.Text(column)) != "" {
			d.names = append(d.names, food.Name{Language: n.language, Text: table.OneLine(rows.Text(column))})
		}
	}
	if column := h.with("specific gravity"); column != "" {
		x, err := rows.Number(column)
		if err != nil {
			return err
		}
		if x > mostGravity || x > 0 && x < leastGravity {
			return rows.Wrong(column, fmt.Sprintf("%.40q is not the specific gravity of a food", rows.Text(column)))
		}
		if x > 0 { // every solid food has 0
			d.gravity, d.printed = x, rows.Text(column)
		}
	}
	if column := h.with("unanalysed portion"); column != "" && rows.Text(column) != "" {
		d.notes = append(d.notes, "not analysed: "+table.OneLine(rows.Text(column)))
	}
	if column := h.first(func(low string) bool { return strings.HasPrefix(low, "analysed portion") }); column != "" && rows.Text(column) != "" {
		text := table.OneLine(rows.Text(column))
		d.notes = append(d.notes, "analysed: "+text)
		d.edible = shareOf(text)
	}
	return nil
}

// shareOf reads "80% (flesh and skin)"; None if no share stands there.
func shareOf(text string) float64 {
	number, _, found := strings.Cut(text, "%")
	x, ok := table.ParsePrinted(strings.TrimSpace(number))
	if !found || !ok || x <= 0 || x > 100 {
		return food.None
	}
	return x / 100
}

// readMeasure reads a row of the measures: a name and its weight in grams.
func readMeasure(rows *table.HeadedSheet, d *details) error {
	h := headings(rows)
	weight := h.with("weight")
	x, err := rows.Number(weight)
	if err != nil {
		return err
	}
	var parts []string
	for _, column := range rows.Header {
		low := strings.ToLower(column)
		if column != weight && (strings.Contains(low, "quantity") || strings.Contains(low, "measure") || strings.Contains(low, "description")) && !strings.Contains(low, " id") {
			parts = append(parts, table.OneLine(rows.Text(column)))
		}
	}
	text := table.OneLine(strings.Join(parts, " "))
	if !(x > 0) || x > largest || text == "" {
		return nil
	}
	d.portions = append(d.portions, food.Portion{Name: text, Grams: x, SD: food.None})
	return nil
}

// readIngredient reads a row of the recipes, as text: its figures are the
// publisher's own and already in the food's values.
func readIngredient(rows *table.HeadedSheet, d *details) error {
	h := headings(rows)
	text := h.first(func(low string) bool { return strings.Contains(low, "ingredient") && strings.Contains(low, "name") })
	if text == "" || table.OneLine(rows.Text(text)) == "" {
		return nil
	}
	line := table.OneLine(rows.Text(text))
	if weight := h.with("weight"); weight != "" && weight != text && rows.Text(weight) != "" {
		line = table.OneLine(rows.Text(weight)) + " g " + line
	}
	d.recipe = append(d.recipe, line)
	return nil
}

// describe puts the details into a food; it gives what is left for its note.
func (d *details) describe(f *food.Food) []string {
	f.Names = append(f.Names, d.names...)
	f.Edible = d.edible
	f.Portions = d.portions
	if food.Stated(d.gravity) {
		_, decimals, _ := strings.Cut(strconv.FormatFloat(d.gravity, 'f', -1, 64), ".")
		half := math.Pow10(-max(len(decimals), 2)) / 2
		f.Density = food.Density{GramsPerMl: d.gravity, SD: half / math.Sqrt(3), Source: work + ": specific gravity " + d.printed}
	}
	notes := d.notes
	if len(d.recipe) > 0 {
		notes = append(notes, "recipe: "+strings.Join(d.recipe, "; "))
	}
	return notes
}
