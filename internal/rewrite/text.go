package rewrite

import (
	"sipsum/internal/amount"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
)

// Text is a drink file as it is written. Open reads a shelf, as in drink.Parse.
type Text struct {
	Name  string
	Bytes []byte
	Open  func(path string) ([]byte, error)
}

// draft is a text that is being changed.
type draft struct {
	of     Text
	drink  *drink.Drink
	faults []fail.Fault
	rows   amount.Rows
}

// draft reads a text as far as it can be read.
func (t Text) draft() *draft {
	d, faults := drink.Parse(t.Name, t.Bytes, t.Open)
	return &draft{t, d, faultsOf(faults), amount.RowsOf(t.Bytes)}
}

func faultsOf(list *fail.List) []fail.Fault {
	if told, is := list.Err(fail.Wrong).(*fail.Error); is {
		return told.Faults
	}
	return nil
}

// done gives the new text if it reads as the old one but for what was asked. Undo takes that out of
// the drink that was read anew, and is false if it is not there.
func (d *draft) done(byHand string, undo func(after *drink.Drink) bool) ([]byte, error) {
	text := d.rows.Text()
	after, list := drink.Parse(d.of.Name, text, d.of.Open)
	if faults := d.added(faultsOf(list)); len(faults) > 0 {
		return nil, &fail.Error{Exit: fail.Wrong, Faults: faults}
	}
	if after.TooLarge || !undo(after) || !same(d.drink, after) {
		return nil, fail.New(fail.Wrong, "this cannot be written into the file without touching something else in it", "write it by hand: "+byHand)
	}
	return text, nil
}

// added gives the faults that were not there before. A fault moves with its row, so what is compared
// is what it says.
func (d *draft) added(now []fail.Fault) []fail.Fault {
	was := map[string]int{}
	for _, f := range d.faults {
		was[f.What]++
	}
	var list []fail.Fault
	for _, f := range now {
		if was[f.What]--; was[f.What] < 0 {
			list = append(list, f)
		}
	}
	return list
}

// missing says that what is to be changed is not there.
func (d *draft) missing(what string) error {
	if len(d.faults) > 0 {
		return fail.New(fail.Wrong, what+" cannot be found while the file has faults", "mend them first, the first at "+d.faults[0].Place.String())
	}
	return fail.New(fail.Wrong, "there is no "+what+" in the file", "open the drink again: the file may have changed")
}
