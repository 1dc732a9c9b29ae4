package ciqual

import (
	"context"
	"fmt"
	"io"
	"slices"

	"sipsum/internal/food"
)

// countSet counts the foods of alim.xml and lists the columns of const.xml, all
// known ones if it is not there.
func (r *reader) countSet(context.Context) (int, []column, error) {
	seen := map[string]bool{}
	err := r.each(r.files.foods, "alim", func(in *records) error {
		_, err := r.aboutOf(in, seen)
		return err
	})
	if err != nil || r.files.heads == "" {
		return len(seen), r.columns.all, err
	}
	var cols []column
	listed := map[string]bool{}
	err = r.each(r.files.heads, "const", func(in *records) error {
		number, heading := in.text("const_code"), in.text("const_nom_fr")
		at, ok := r.columns.byNumber[number]
		switch {
		case !ok:
			return in.wrong("const_code", fmt.Sprintf("constituent %.40q (%.60q) is not known to sipsum", number, heading))
		case listed[number]:
			return in.wrong("const_code", fmt.Sprintf("constituent %s stands twice", number))
		case r.columns.all[at].heading != heading:
			return in.wrong("const_nom_fr", fmt.Sprintf("constituent %s is %.60q, not %q: its unit may differ", number, heading, r.columns.all[at].heading))
		}
		listed[number] = true
		cols = append(cols, r.columns.all[at])
		return nil
	})
	return len(seen), cols, err
}

// aboutOf reads a record of alim.xml.
func (r *reader) aboutOf(in *records, seen map[string]bool) (about, error) {
	code, ok := codeOf(in.text("alim_code"))
	if !ok {
		return about{}, in.wrong("alim_code", fmt.Sprintf("%.40q is not a code of digits", in.text("alim_code")))
	}
	if seen[code] {
		return about{}, in.wrong("alim_code", fmt.Sprintf("food %s stands twice", code))
	}
	seen[code] = true
	a := about{
		code: code, french: in.text("alim_nom_fr"), index: in.text("alim_nom_index_fr"),
		english: in.text("alim_nom_eng"), latin: in.text("alim_nom_sci"),
	}
	if a.french == "" {
		return a, in.wrong("alim_nom_fr", "the food has no name")
	}
	for i, heading := range groupHeadings {
		a.groups[i] = in.text(heading)
	}
	return a, nil
}

// groupNames reads alim_grp.xml: for each level the French name by code.
func (r *reader) groupNames() ([3]map[string]string, error) {
	names := [3]map[string]string{{}, {}, {}}
	if r.files.groups == "" {
		return names, nil
	}
	return names, r.each(r.files.groups, "alim_grp", func(in *records) error {
		for i := range names {
			names[i][in.text(groupHeadings[i])] = in.text(groupNameHeadings[i])
		}
		return nil
	})
}

// foodsOfSet is the stream of the XML set. The values need not be in the order
// of the foods, so all are read first.
func (r *reader) foodsOfSet(ctx context.Context, yield func(*food.Food, error) bool) error {
	groups, err := r.groupNames()
	if err != nil {
		return err
	}
	values, err := r.valuesOfSet(ctx)
	if err != nil {
		return err
	}
	seen := map[string]bool{}
	stopped := false
	err = r.each(r.files.foods, "alim", func(in *records) error {
		if err := ctx.Err(); err != nil {
			return err
		}
		a, err := r.aboutOf(in, seen)
		if err != nil {
			return err
		}
		for i, code := range a.groups {
			a.groupNames[i] = groups[i][code]
		}
		f := r.food(a)
		f.Values = values[a.code]
		takePolyolsOff(f.Values, r.available, r.polyol)
		if stopped = !yield(f, nil); stopped {
			return io.EOF
		}
		return nil
	})
	if stopped {
		return nil
	}
	return err
}

// valuesOfSet reads compo.xml: the values of each food, in the order of the
// columns.
func (r *reader) valuesOfSet(ctx context.Context) (map[string][]food.Value, error) {
	known := map[string]bool{}
	err := r.each(r.files.foods, "alim", func(in *records) error {
		_, err := r.aboutOf(in, known)
		return err
	})
	if err != nil {
		return nil, err
	}
	values := make(map[string][]food.Value, len(known))
	err = r.each(r.files.values, "compo", func(in *records) error {
		if err := ctx.Err(); err != nil {
			return err
		}
		code, _ := codeOf(in.text("alim_code"))
		if !known[code] {
			return in.wrong("alim_code", fmt.Sprintf("food %.40q is not in %s", in.text("alim_code"), r.files.foods))
		}
		v, there, err := r.valueOf(in)
		if err != nil {
			return err
		}
		if slices.ContainsFunc(values[code], func(other food.Value) bool { return other.Constituent == v.Constituent }) {
			return in.wrong("const_code", fmt.Sprintf("food %s has constituent %s twice", code, in.text("const_code")))
		}
		if there {
			values[code] = append(values[code], v)
		}
		return nil
	})
	return values, err
}

// valueOf reads a record of compo.xml.
func (r *reader) valueOf(in *records) (v food.Value, there bool, err error) {
	at, ok := r.columns.byNumber[in.text("const_code")]
	if !ok {
		return v, false, in.wrong("const_code", fmt.Sprintf("constituent %.40q is not known to sipsum", in.text("const_code")))
	}
	c := r.columns.all[at]
	v, there, wrong := c.value(r.tableID, in.text("teneur"))
	if wrong != "" {
		return v, false, in.wrong("teneur", wrong)
	}
	if v.Low, err = c.end(in, "min"); err != nil {
		return v, false, err
	}
	if v.High, err = c.end(in, "max"); err != nil {
		return v, false, err
	}
	switch confidence := in.text("code_confiance"); confidence {
	case "A", "B", "C", "D":
		v.Source = work + "-" + confidence
	case "", "-":
	default:
		return v, false, in.wrong("code_confiance", fmt.Sprintf("%.40q is not a confidence code A to D", confidence))
	}
	if code := in.text("source_code"); code != "" && code != "-" {
		v.Ref += ", source " + code
	}
	return v, there, nil
}

// end reads the least or greatest value found; None for a mark, since a trace or
// a limit is no figure.
func (c column) end(in *records, field string) (float64, error) {
	v, _, wrong := c.value("", in.text(field))
	if wrong != "" {
		return food.None, in.wrong(field, wrong)
	}
	return v.Amount, nil
}
