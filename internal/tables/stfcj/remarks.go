package stfcj

import (
	"math"
	"regexp"
	"strings"

	"golang.org/x/text/unicode/norm"

	"sipsum/internal/food"
)

// perVolume is "100 g：97 mL、100 mL：103 g", in plain characters.
var perVolume = regexp.MustCompile(`100\s*g\s*:\s*([0-9.]+)\s*m[lL]\s*、\s*100\s*m[lL]\s*:\s*([0-9.]+)\s*g`)

// halves is how far the two halves of such a remark may contradict each other:
// both are rounded to whole numbers, or to two digits.
const halves = 0.03

// density reads the density of a remark, g/ml; None if it has none or its two
// halves contradict each other.
func density(remark string) food.Density {
	none := food.Density{GramsPerMl: food.None, SD: food.None}
	found := perVolume.FindStringSubmatch(norm.NFKC.String(remark))
	if found == nil {
		return none
	}
	ml, badMl := number(found[1])
	grams, badGrams := number(found[2])
	if badMl != "" || badGrams != "" || math.Abs(ml*grams/1e4-1) > halves {
		return none
	}
	return food.Density{GramsPerMl: grams / 100, SD: food.None, Source: "remarks of the main table: " + text(found[0])}
}

// amount is "カフェイン： 0.06 g" or "Tr": what may follow a word of the remarks.
// A share by volume is no amount of this kind.
var amount = regexp.MustCompile(`^\s*:?\s*(\(?(?:[0-9]+(?:\.[0-9]+)?|Tr)\)?)\s*(g|$|[、\s])`)

// noted reads the amounts that a remark gives in words.
func (r *reader) noted(remark string, p part) []food.Value {
	if remark == "" {
		return nil
	}
	var values []food.Value
	plainText := norm.NFKC.String(remark)
	for _, c := range r.all {
		if c.part != remarks {
			continue
		}
		_, after, found := strings.Cut(plainText, c.name)
		if !found {
			continue
		}
		printed := amount.FindStringSubmatch(after)
		if printed == nil {
			continue
		}
		v, stated, what := c.value(printed[1], p)
		if !stated || what != "" {
			continue
		}
		v.Ref = "remarks: " + text(c.name+strings.TrimRight(printed[0], "、"))
		values = append(values, v)
	}
	return values
}
