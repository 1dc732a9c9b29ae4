package fit

import (
	"context"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/spelling"
	"sipsum/internal/unit"
)

// find finds the food that is named among those that lines pour.
func (s *swap) find() error {
	var names []string
	asked := spelling.Plain(s.Food)
	named := func(f *food.Food) bool {
		short, _, _ := strings.Cut(f.Name(), ",")
		return strings.EqualFold(f.ID.String(), s.Food) || spelling.Plain(f.Name()) == asked || spelling.Plain(short) == asked
	}
	if !slices.ContainsFunc(s.recipe.Drink.Poured(), func(l drink.Line) bool {
		in := s.recipe.Lines[l.Path]
		return in.Profile != nil && named(in.Profile.Food)
	}) {
		named = s.speaksOf
	}
	for _, line := range s.recipe.Drink.Poured() {
		in := s.recipe.Lines[line.Path]
		if in.Profile == nil {
			continue
		}
		f := in.Profile.Food
		if !slices.Contains(names, f.ID.String()) {
			names = append(names, f.ID.String())
		}
		switch {
		case !named(f):
			continue
		case s.Of != nil && s.Of.ID != f.ID:
			return fail.New(fail.Wrong, note.Quote(s.Food)+" may be "+s.Of.ID.String()+" or "+f.ID.String(), "write the code of the one you mean")
		}
		s.Of = f
		s.Lines = append(s.Lines, line)
	}
	if s.Of != nil {
		return nil
	}
	do := "name one by its code or its name"
	if len(names) > 0 {
		do = "there are: " + strings.Join(names, ", ")
	}
	return fail.New(fail.Wrong, note.Quote(s.Food)+" is no food that the drink pours", do)
}

// speaksOf reports whether what was asked for are words with which the code of a food begins: maple, cacao-nib.
func (s *swap) speaksOf(f *food.Food) bool {
	said := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(s.Food)), " ", "-")
	return said != "" && strings.HasPrefix(f.ID.Code+"-", said+"-")
}

// asItIs makes a bench of the drink without the readings that no longer hold, so that like stands beside like.
func (s *swap) asItIs(ctx context.Context) (Bench, error) {
	d := bare(s.recipe.Drink)
	touched := map[string]bool{}
	pours := func(list []drink.Line) bool {
		return slices.ContainsFunc(list, func(l drink.Line) bool {
			return touched[l.Food] || slices.ContainsFunc(s.Lines, func(x drink.Line) bool { return x.Path == l.Path })
		})
	}
	for again := true; again; {
		again = false
		for i := range d.Components {
			c := &d.Components[i]
			holds := pours(c.Ingredients) || slices.ContainsFunc(c.Steps, func(x drink.Step) bool { return pours(x.Lines()) })
			if !holds || touched[c.Name] {
				continue
			}
			touched[c.Name], again = true, true
			if forgotten(c) {
				s.Unread = append(s.Unread, c.Name)
			}
		}
	}
	if slices.ContainsFunc(d.Finish, isReading) {
		d.Finish = slices.DeleteFunc(slices.Clone(d.Finish), isReading)
		s.Unread = append(s.Unread, "the drink")
	}
	b, _, err := s.kitchen(ctx, d)
	return b, err
}

// bare copies a drink without what is said of it.
func bare(d *drink.Drink) *drink.Drink {
	next := *d
	next.Targets, next.Vary, next.Claims = nil, nil, nil
	next.Mentions = nil
	next.Components = slices.Clone(d.Components)
	return &next
}

// with copies a drink with another food in the place of the one that is exchanged. Lines have the
// paths that a file with it has.
func (s *swap) with(f *food.Food) (*drink.Drink, []Pour) {
	d := bare(s.bench.Drink)
	var pours []Pour
	for i := range d.Components {
		c := &d.Components[i]
		c.Ingredients = s.instead(c.Ingredients, f, &pours)
		c.Steps = s.insteadIn(c.Steps, f, &pours)
	}
	d.Build = s.instead(d.Build, f, &pours)
	d.Finish = s.insteadIn(d.Finish, f, &pours)
	return d, pours
}

// insteadIn does so in the lists of steps.
func (s *swap) insteadIn(steps []drink.Step, f *food.Food, pours *[]Pour) []drink.Step {
	next := slices.Clone(steps)
	for i, step := range steps {
		lines := s.instead(step.Lines(), f, pours)
		if slices.Equal(lines, step.Lines()) {
			continue
		}
		other := reflect.New(reflect.TypeOf(step).Elem()) // a step is a pointer to what its head is part of
		other.Elem().Set(reflect.ValueOf(step).Elem())
		other.Elem().FieldByName("Head").FieldByName("Ingredients").Set(reflect.ValueOf(lines))
		next[i] = other.Interface().(drink.Step)
	}
	return next
}

// instead gives the lines of one list with the other food.
func (s *swap) instead(list []drink.Line, f *food.Food, pours *[]Pour) []drink.Line {
	if !slices.ContainsFunc(list, s.is) {
		return list
	}
	next, count := slices.Clone(list), map[string]int{}
	for i := range next {
		l := &next[i]
		was, of := l.Path, once(l.Path)
		if s.is(*l) {
			of = was[:strings.LastIndexByte(was, '/')+1] + f.ID.String()
			if l.Portion != "" {
				l.Amount = unit.Amount{Number: l.Count * s.recipe.Lines[was].Grams, Measure: gram(), Decimals: 1}
			}
			from := l.Amount
			l.Food, l.Fill, l.As, l.Portion, l.Count, l.Counted = f.ID.String(), "", "", "", 0, false
			*pours = append(*pours, Pour{Path: was, From: from})
		}
		count[of]++
		if l.Path = of; count[of] > 1 {
			l.Path += "~" + strconv.Itoa(count[of])
		}
		if s.is(list[i]) {
			(*pours)[len(*pours)-1].Now = l.Path
		}
	}
	return next
}

func (s *swap) is(l drink.Line) bool {
	return slices.ContainsFunc(s.Lines, func(x drink.Line) bool { return x.Path == l.Path })
}

// once is a path without what tells the second line of a name from the first.
func once(path string) string {
	i := strings.LastIndexByte(path, '~')
	if i < 0 {
		return path
	}
	if _, err := strconv.Atoi(path[i+1:]); err != nil {
		return path
	}
	return path[:i]
}

func gram() unit.Measure {
	m, _ := unit.FindMeasure("g")
	return m
}
