package prep

import (
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/unit"
)

// Ahead tells what no pot makes right about a step, so that it can be told together with all else
// that is wrong with a file, before anything is calculated.
func Ahead(step drink.Step) error {
	switch s := step.(type) {
	case *drink.Heat:
		if s.Code != "" {
			_, err := retentionOf(s)
			return err
		}
	case *drink.Ferment:
		var faults fail.List
		for _, figure := range s.Figures {
			faults.Join(figure.Place, canStay(figure))
		}
		return faults.Err(fail.Wrong)
	}
	return nil
}

// retentionOf gives the published factors that heat names.
func retentionOf(s *drink.Heat) (Retention, error) {
	r, ok := FindRetention(s.Code)
	if !ok {
		return r, fail.New(fail.Wrong, `unknown retention code "`+s.Code+`"`, "use a code of the USDA retention table, such as 2151")
	}
	return r, nil
}

// canStay refuses a figure of what no ferment leaves behind.
func canStay(figure drink.Stated) error {
	_, isMass := unit.Convert(figure.Unit, "g")
	if !fermentable(constituent.ID(figure.Tag)) || (!isMass && figure.State == "") {
		return fail.At(fail.Wrong, figure.Place, `ferment cannot state "`+figure.Tag+`"`, "state ALC, acids such as LACAC, SUGAR or single sugars, in g or mg")
	}
	return nil
}
