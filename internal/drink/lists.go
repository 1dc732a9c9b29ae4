package drink

import "iter"

// lists gives the lists of lines of a component: its ingredients, then those of
// its steps.
func (c *Component) lists() []*[]Line {
	return append([]*[]Line{&c.Ingredients}, stepLists(c.Steps)...)
}

// outerLists gives the lists of lines that stand outside components.
func (d *Drink) outerLists() iter.Seq[*[]Line] {
	return func(yield func(*[]Line) bool) {
		lists := append([]*[]Line{&d.Build}, stepLists(d.Finish)...)
		for _, l := range append(lists, &d.Garnish) {
			if !yield(l) {
				return
			}
		}
	}
}

// lists gives every list of lines of the drink.
func (d *Drink) lists() iter.Seq[*[]Line] {
	return func(yield func(*[]Line) bool) {
		for i := range d.Components {
			for _, l := range d.Components[i].lists() {
				if !yield(l) {
					return
				}
			}
		}
		d.outerLists()(yield)
	}
}

func stepLists(steps []Step) []*[]Line {
	var lists []*[]Line
	for _, s := range steps {
		lists = append(lists, s.list())
	}
	return lists
}
