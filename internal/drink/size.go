package drink

import (
	"fmt"

	"sipsum/internal/fail"
)

// What the size of a drink is made of, from data/size_limits.csv.
var (
	mostOut  = limit("lines out")
	mostSize = limit("size")

	partLine        = limit("part line")
	partComponent   = limit("part component")
	partRow         = limit("part row")
	partStep        = limit("part step")
	partStepMore    = limit("part step more")
	partSourStep    = limit("part sour step")
	partDose        = limit("part dose")
	partReading     = limit("part reading")
	partReadingMore = limit("part reading more")
)

// usualDraws is the calculation that the limit of a drink's size is meant for.
const usualDraws = 1000

// size is what a drink asks of the calculation.
type size struct {
	lines, components, steps, readings int // lines and steps of the drink written out
	parts                              int
}

// sizer counts what the components of a drink come to when every component in
// them is replaced by its ingredients. It does so component by component, without
// writing anything out: a few that use each other twice would make millions of
// lines.
type sizer struct {
	drink *Drink
	lines map[string]int // by component
	used  map[string]bool
	size  size
}

// checkSize reports a drink that is too large to be calculated, and takes
// everything out of it so that nobody walks what it would be written out.
func (w *whole) checkSize() {
	s := &sizer{drink: w.drink, lines: map[string]int{}, used: map[string]bool{}}
	refuse := func(at fail.Place, err error) {
		w.file.faults.Join(at, err)
		w.drink.TooLarge, w.drink.Components, w.drink.Build, w.drink.Finish, w.drink.Garnish = true, nil, nil, nil, nil
	}
	for i := range w.drink.Components { // those too that the drink does not use: their foods are looked up
		if c := &w.drink.Components[i]; s.component(c) > mostOut {
			refuse(c.Place, tooManyLines())
			return
		}
	}
	for _, list := range w.drink.outerLists() {
		for i := range *list {
			if s.size.lines += s.list((*list)[i : i+1]); s.size.lines > mostOut {
				refuse((*list)[i].Place, tooManyLines())
				return
			}
		}
	}
	s.whole()
	w.drink.size = s.size
	if err := w.drink.Fits(usualDraws); err != nil {
		refuse(w.file.at(1, 1), err)
	}
}

func tooManyLines() error {
	return fail.New(fail.Wrong, fmt.Sprintf("written out, every component replaced by its ingredients, it comes to more than %d ingredient lines", mostOut),
		"use fewer lines, or components in each other less often")
}

// component counts the lines of a component written out, not beyond the first
// that is too many. Circles have been broken before.
func (s *sizer) component(c *Component) int {
	if _, known := s.lines[c.Name]; !known {
		lines := 0
		for _, list := range c.lists() {
			lines = min(lines+s.list(*list), mostOut+1)
		}
		s.lines[c.Name] = lines
	}
	return s.lines[c.Name]
}

func (s *sizer) list(lines []Line) int {
	total := 0
	for _, l := range lines {
		if c, ok := s.drink.Component(l.Food); ok {
			total += s.component(c)
		} else {
			total++
		}
		total = min(total, mostOut+1)
	}
	return total
}

// whole adds up the parts of the calculation: the build with what finishes it,
// and every component that is used, which is made once.
func (s *sizer) whole() {
	s.size.parts += partLine * s.size.lines
	s.steps(s.drink.Finish, nil, s.size.lines)
	for _, list := range s.drink.outerLists() {
		s.use(*list)
	}
}

func (s *sizer) use(lines []Line) {
	for _, l := range lines {
		c, ok := s.drink.Component(l.Food)
		if !ok || s.used[c.Name] {
			continue
		}
		s.used[c.Name] = true
		rows := s.component(c)
		s.size.components++
		s.size.parts += partComponent + partRow*rows
		s.steps(c.Steps, c.Measured, rows)
		for _, list := range c.lists() {
			s.use(*list)
		}
	}
}

func (s *sizer) steps(steps []Step, end *Measured, rows int) {
	readings := 0
	if end != nil {
		readings++
	}
	for _, step := range steps {
		switch step.(type) {
		case *Measured:
			readings++
		case *Reduce, *Heat, *Caramelise:
			s.size.parts += partSourStep
		case *Adjust:
			s.size.parts += partDose
		}
	}
	s.size.readings += readings
	s.size.steps += len(steps) - readings
	if end != nil {
		s.size.steps++
	}
	s.size.parts += readings*(partReading*rows+partReadingMore) + len(steps)*(partStep*rows+partStepMore)
}

// Parts is what a drink asks of a calculation, in the parts of data/size_limits.csv.
func (d *Drink) Parts() int { return d.size.parts }

// Fits tells whether a drink can be calculated with so many draws in the memory
// and time that a calculation may take; the error says what to do.
func (d *Drink) Fits(draws int) error {
	if d.size.parts*max(draws, usualDraws) <= mostSize*usualDraws {
		return nil
	}
	do := "use fewer lines, steps or readings, or make two drinks of it"
	if draws > usualDraws && d.size.parts <= mostSize {
		do = fmt.Sprintf("use at most --draws %d", mostSize*usualDraws/d.size.parts)
	}
	return fail.New(fail.Wrong, fmt.Sprintf("with %d ingredient lines written out, %d components, %d steps and %d readings the drink is too large to be calculated with %d draws",
		d.size.lines, d.size.components, d.size.steps, d.size.readings, draws), do)
}
