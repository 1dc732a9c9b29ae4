package difference

import (
	"cmp"
	"fmt"
	"iter"
	"slices"

	"sipsum/internal/constituent"
	"sipsum/internal/food"
)

// Edition is one side of a comparison.
type Edition struct {
	Columns []food.Column
	Foods   iter.Seq2[*food.Food, error] // in ascending order of code
}

// Kind is what became of a food.
type Kind uint8

// The kinds.
const (
	Added   Kind = iota // only the new edition has it
	Removed             // only the old edition has it
	Changed             // its name or a value is another
)

var kinds = [...]string{"added", "removed", "changed"}

// String gives the word of the kind.
func (k Kind) String() string { return kinds[k] }

// Change is one food that is not the same in both editions.
type Change struct {
	Kind    Kind
	Code    string
	OldName string // empty if the old edition does not have it
	NewName string // empty if the new edition does not have it
	Values  []Value
}

// Renamed reports whether the food has another name.
func (c Change) Renamed() bool { return c.Kind == Changed && c.OldName != c.NewName }

// Value is one constituent that is not the same in both editions; one side is
// nil if that edition has no value.
type Value struct {
	Constituent constituent.ID // as the new edition calls it, else the old
	Old, New    *food.Value
}

// Compare gives the foods that differ, in ascending order of code. An error, of
// an edition or because its foods are out of order, ends the stream.
func Compare(old, new Edition) iter.Seq2[Change, error] {
	return func(yield func(Change, error) bool) {
		c := newComparer(old.Columns, new.Columns)
		a, b := walk(old.Foods), walk(new.Foods)
		defer a.stop()
		defer b.stop()
		err := cmp.Or(a.step(), b.step())
		for err == nil && (a.food != nil || b.food != nil) {
			var change Change
			var differs bool
			switch order := a.order(b); {
			case order < 0:
				change, differs = Change{Kind: Removed, Code: a.food.ID.Code, OldName: a.food.Name()}, true
				err = a.step()
			case order > 0:
				change, differs = Change{Kind: Added, Code: b.food.ID.Code, NewName: b.food.Name()}, true
				err = b.step()
			default:
				change, differs = c.compare(a.food, b.food)
				err = cmp.Or(a.step(), b.step())
			}
			if differs && !yield(change, nil) {
				return
			}
		}
		if err != nil {
			yield(Change{}, err)
		}
	}
}

// walker stands at one food of a stream.
type walker struct {
	next func() (*food.Food, error, bool)
	stop func()
	food *food.Food // nil at the end
}

func walk(foods iter.Seq2[*food.Food, error]) *walker {
	w := &walker{}
	w.next, w.stop = iter.Pull2(foods)
	return w
}

// step goes to the next food.
func (w *walker) step() error {
	last := w.food
	f, err, ok := w.next()
	switch {
	case !ok:
		w.food = nil
		return nil
	case err != nil:
		return err
	case last != nil && f.ID.Code <= last.ID.Code:
		return fmt.Errorf("difference: food %s does not come after %s", f.ID, last.ID)
	}
	w.food = f
	return nil
}

// order compares codes; the end comes after all.
func (w *walker) order(other *walker) int {
	switch {
	case w.food == nil:
		return 1
	case other.food == nil:
		return -1
	}
	return cmp.Compare(w.food.ID.Code, other.food.ID.Code)
}

// compare compares two foods of the same code.
func (c *comparer) compare(old, new *food.Food) (Change, bool) {
	change := Change{Kind: Changed, Code: new.ID.Code, OldName: old.Name(), NewName: new.Name()}
	was := map[string]*food.Value{}
	for i := range old.Values {
		v := &old.Values[i]
		was[key(old.ID.Table, v.Constituent)] = v
	}
	for i := range new.Values {
		v := &new.Values[i]
		k := key(new.ID.Table, v.Constituent)
		before := was[k]
		delete(was, k)
		if c.both(k) && (before == nil || c.differ(k, before, v)) {
			change.Values = append(change.Values, Value{Constituent: v.Constituent, Old: before, New: v})
		}
	}
	for k, v := range was {
		if c.both(k) {
			change.Values = append(change.Values, Value{Constituent: v.Constituent, Old: v})
		}
	}
	slices.SortFunc(change.Values, func(a, b Value) int {
		return cmp.Or(cmp.Compare(c.place(old, new, a), c.place(old, new, b)), cmp.Compare(a.Constituent, b.Constituent))
	})
	return change, change.Renamed() || len(change.Values) > 0
}
