package recipe

import (
	"slices"
	"strings"

	"sipsum/internal/fail"
	"sipsum/internal/food"
	"sipsum/internal/note"
	"sipsum/internal/spelling"
)

// mostMeant is how many of the drink's own names an error suggests.
const mostMeant = 3

// named finds what a line calls by its name: an own food, or the one food of the tables. A name
// that looks like one of the drink's own is not taken for a food of a table behind its back.
func (r *resolver) named(text string) (*food.Food, error) {
	if f, err := r.ownNamed(text); f != nil || err != nil {
		return f, err
	}
	own, like := r.ownNear(text)
	id, ok, err := r.foods.Named(r.ctx, text)
	switch {
	case like && ok:
		return nil, fail.New(fail.Wrong, note.Quote(text)+" is not one of this drink's names, and looks like one", "did you mean "+fail.Or(append(own, id.String()))+"?")
	case like:
		return nil, fail.New(fail.Wrong, "no component and no food is called "+note.Quote(text), "did you mean "+fail.Or(own)+"?")
	case err != nil:
		return nil, err
	case ok:
		return r.foods.Food(r.ctx, id)
	}
	return nil, fail.New(fail.Wrong, "no component and no food is called "+note.Quote(text), r.suggest(text, own))
}

// ownNear gives what the drink itself calls nearly so, the nearest first, each as a line writes it;
// like tells that letters, case or spaces are all that is amiss in the first.
func (r *resolver) ownNear(text string) (own []string, like bool) {
	written := map[string]string{} // how a line writes what is called so
	var names []string
	call := func(name, line string) {
		if written[name] == "" {
			written[name] = line
			names = append(names, name)
		}
	}
	for _, c := range r.drink.Components {
		call(c.Name, "your "+c.Name)
	}
	for _, o := range r.drink.Foods {
		line := "your " + food.Own + ":" + o.Code
		call(o.Code, line)
		call(o.Name, line)
	}
	near := spelling.Nearest(text, names)
	for _, name := range near {
		if !slices.Contains(own, written[name]) && len(own) < mostMeant {
			own = append(own, written[name])
		}
	}
	if len(near) > 0 {
		n, _ := spelling.Near(spelling.NameOf(text), spelling.NameOf(near[0]))
		like = n.InLetters()
	}
	if like {
		own = own[:1]
	}
	return own, like
}

// ownCoded gives the own food of a code, in any case if only one has it so.
func (r *resolver) ownCoded(code string) (*food.Food, error) {
	if f, ok := r.own[code]; ok {
		return f, nil
	}
	var alike []string
	for _, o := range r.drink.Foods { // in the order of the file
		if strings.EqualFold(o.Code, code) && r.own[o.Code] != nil {
			alike = append(alike, o.Code)
		}
	}
	if len(alike) == 1 {
		return r.own[alike[0]], nil
	}
	own, _ := r.ownNear(code)
	return nil, fail.New(fail.Wrong, "no own food "+note.Quote(code)+" under foods:", r.suggest(code, own))
}

// ownNamed gives the own food that is called so; nil if none is. Of two that share the
// name nobody can tell which is meant.
func (r *resolver) ownNamed(name string) (*food.Food, error) {
	var found []string
	for _, o := range r.drink.Foods { // in the order of the file
		if o.Name == name && r.own[o.Code] != nil {
			found = append(found, food.Own+":"+o.Code)
		}
	}
	switch len(found) {
	case 0:
		return nil, nil
	case 1:
		return r.own[strings.TrimPrefix(found[0], food.Own+":")], nil
	}
	return nil, fail.New(fail.Wrong, note.Quote(name)+" is the name of more than one own food", "write the one you mean: "+strings.Join(found, " or "))
}

// suggest says what a text that names nothing may mean: the drink's own names before foods.
func (r *resolver) suggest(text string, own []string) string {
	if fields := strings.Fields(text); len(fields) > 1 {
		if last := fields[len(fields)-1]; strings.Contains(last, ":") {
			if _, err := r.find(last); err == nil {
				return "write the amount and then the food alone: " + last
			}
		}
	}
	if do := plainly(text); do != "" && len(own) > 0 {
		return "did you mean " + fail.Or(own) + "? Else " + do
	} else if do != "" {
		return do
	}
	near := slices.Concat(own, r.foods.Near(r.ctx, text))
	if len(near) == 0 {
		return "search with: sipsum food find WORDS"
	}
	return "did you mean " + fail.Or(near) + "?"
}
