package fdc

import (
	"context"
	"fmt"
	"io"
	"strconv"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/tables/table"
)

// reader is what the stream of foods needs from the small files.
type reader struct {
	files       files
	tableID     string
	rules       *table.Groups
	types       map[string]bool // data types that are refused
	columns     *columns
	derivations *derivations
	categories  map[string]string
	units       dictionary
	order       *order
	held        int // bytes that the drawers may hold
}

// foods is the stream: it gathers what the files say of each food, then goes
// through the foods in their order.
func (r *reader) foods(ctx context.Context, yield func(*food.Food, error) bool) {
	g, err := r.gather(ctx)
	if err != nil {
		yield(nil, err)
		return
	}
	defer g.close()
	var in foodRows
	if r.files.has(foodFile) {
		if in, err = r.files.openFoods(); err != nil {
			yield(nil, err)
			return
		}
		defer in.close()
	}
	a := assembler{reader: r, seen: make([]int, len(r.columns.list))}
	for place := range r.order.ids {
		if err = ctx.Err(); err != nil {
			break
		}
		if place%perDrawer == 0 {
			if err = a.open(g, place/perDrawer); err != nil {
				break
			}
		}
		var f *food.Food
		var n notes
		if f, err = r.describe(in, uint32(place), &n); err != nil {
			break
		}
		if err = a.assemble(f, uint32(place), &n); err != nil || !yield(f, nil) {
			break
		}
	}
	if err != nil {
		yield(nil, err)
	}
}

// describe makes the food at a place, without values, from its row of food.csv.
func (r *reader) describe(in foodRows, place uint32, n *notes) (*food.Food, error) {
	f := table.NewFood(r.tableID, r.order.code(place))
	if in.rows == nil {
		return f, nil
	}
	for {
		if err := in.next(); err != nil {
			if err == io.EOF {
				err = fail.At(fail.Failed, fail.Place{File: in.name}, "the file changed while it was read", "load it again")
			}
			return nil, err
		}
		id, err := in.key(in.id)
		if err != nil {
			return nil, err
		}
		if id == r.order.ids[place] {
			break // any other row is refused or repeats an earlier one
		}
	}
	text, err := in.texts(in.called, in.kind, in.category, in.published, in.latin)
	if err != nil {
		return nil, err
	}
	called, kind, category, published, latin := text[0], text[1], text[2], text[3], text[4]
	if called == "" {
		return nil, in.wrong(in.called, "the food has no description")
	}
	f.Names = append(f.Names, food.Name{Language: "en", Text: strings.Clone(called)})
	if latin != "" {
		f.Names = append(f.Names, food.Name{Language: "la", Text: strings.Clone(latin)})
	}
	f.PublisherGroup = r.category(category)
	n.add("Data type: ", strings.TrimSpace(kind+" "+published))
	return f, nil
}

// category gives the name of a category; where the cell holds a name instead of
// a number, that.
func (r *reader) category(cell string) string {
	if name, ok := r.categories[strings.TrimSuffix(cell, ".0")]; ok {
		return name
	}
	if _, number := wholeOf(cell); number {
		return ""
	}
	return strings.Clone(cell)
}

// assembler adds to foods what the drawers hold of them.
type assembler struct {
	*reader
	seen    []int // per column, one more than the place in values of the current food
	values  []value
	touched []int
	drawers [2]contents // of the values, of the rest
}

// open opens the drawers of a range of foods.
func (a *assembler) open(g gathered, i int) error {
	if err := g.values.take(i, &a.drawers[0]); err != nil {
		return err
	}
	return g.texts.take(i, &a.drawers[1])
}

func (a *assembler) assemble(f *food.Food, place uint32, n *notes) error {
	onValues, err := a.takeValues(f, place)
	if err != nil {
		return err
	}
	for s := range a.drawers[1].of(place) {
		a.tell(f, s, n)
	}
	if len(f.Names) == 0 {
		f.Names = append(f.Names, food.Name{Language: "en", Text: "FDC food " + f.ID.Code})
		n.add("No file of the release describes this food.")
	}
	f.Group = a.rules.Group(f.PublisherGroup, f.Name())
	for _, text := range onValues {
		n.add(text)
	}
	f.Note = n.String()
	return nil
}

// takeValues gives the food its values, and says what is to be noted on them.
func (a *assembler) takeValues(f *food.Food, place uint32) (onValues []string, err error) {
	a.values = a.values[:0]
	for s := range a.drawers[0].of(place) {
		err = unpack(s.body, func(v *value) error {
			text, err := a.add(f, v)
			if text != "" {
				onValues = append(onValues, text)
			}
			return err
		})
		if err != nil {
			break
		}
	}
	for _, column := range a.touched {
		a.seen[column] = 0
	}
	a.touched = a.touched[:0]
	if err == nil {
		a.give(f)
	}
	return onValues, err
}

// tell adds what a slip says besides values. A food has the name of food.csv, if
// it is there.
func (a *assembler) tell(f *food.Food, s slip, n *notes) {
	switch s.kind {
	case ofBrand:
		b := brandOf(s.body)
		if called := b.called(); len(f.Names) == 0 && called != "" {
			f.Names = append(f.Names, food.Name{Language: "en", Text: called})
		}
		b.tell(f, n)
	case ofPortion:
		a.measure(f, s.body)
	case ofNote:
		n.add(string(s.body))
	case ofGroup:
		f.PublisherGroup = string(s.body)
	}
}

// give hands the values to the food.
func (a *assembler) give(f *food.Food) {
	f.Values = make([]food.Value, len(a.values))
	for i := range a.values {
		v := &a.values[i]
		v.into(&f.Values[i], &a.columns.list[v.column], &a.derivations.list[v.derivation])
	}
}

// add takes a value of the food, and says what is to be noted about it. The
// publisher has foods with two rows for one nutrient; the first stands. A row
// that is there twice is an error.
func (a *assembler) add(f *food.Food, v *value) (text string, err error) {
	column := &a.columns.list[v.column]
	if before := a.seen[v.column]; before > 0 {
		first := &a.values[before-1]
		switch {
		case first.id == v.id:
			return "", fail.At(fail.Wrong, fail.Place{File: a.files.place(a.files.at[valueFile]), Line: v.line, Col: 1},
				fmt.Sprintf("food %s has nutrient %s twice, in the same row as line %d", f.ID.Code, column.number, first.line), again)
		case first.amount == v.amount:
			return "", nil
		}
		return fmt.Sprintf("On %s: published twice, as %s and as %s; the first is used.", column.number, plain(first.amount), plain(v.amount)), nil
	}
	a.values = append(a.values, *v)
	a.seen[v.column] = len(a.values)
	a.touched = append(a.touched, v.column)
	if v.footnote != "" {
		return "On " + column.number + ": " + v.footnote, nil
	}
	return "", nil
}

func plain(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }
