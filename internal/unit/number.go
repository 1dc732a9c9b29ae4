package unit

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// vulgar are the fractions that keyboards write as one sign.
var vulgar = strings.NewReplacer("½", "1/2", "⅓", "1/3", "⅔", "2/3", "¼", "1/4", "¾", "3/4", "⅕", "1/5", "⅖", "2/5", "⅗", "3/5", "⅘", "4/5",
	"⅙", "1/6", "⅚", "5/6", "⅛", "1/8", "⅜", "3/8", "⅝", "5/8", "⅞", "7/8", "⁄", "/")

// The forms of a number: mixed ("1 1/2", "1½"), with a hyphen ("1-1/2", where "0-1/2" and "1-3/2"
// are ranges), or anything of digits, points, commas and a stroke.
var (
	mixedForm  = regexp.MustCompile(`^([0-9]+)(?: ?([½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])|[ -]([0-9]+[/⁄][0-9]+))`)
	simpleForm = regexp.MustCompile(`^(?:[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]|[0-9./,⁄]*[0-9][0-9./,⁄]*)`)
)

// cutNumber gives the number that a text begins with, "" if it begins with none.
func cutNumber(text string) (number, rest string) {
	if m := mixedForm.FindStringSubmatch(text); m != nil {
		over, under, _ := strings.Cut(vulgar.Replace(m[2]+m[3]), "/")
		a, _ := strconv.ParseFloat(over, 64)
		b, _ := strconv.ParseFloat(under, 64)
		whole, _ := strconv.ParseFloat(m[1], 64)
		if a < b && (whole > 0 || !strings.Contains(m[0], "-")) {
			return m[0], text[len(m[0]):]
		}
	}
	number = simpleForm.FindString(text)
	return number, text[len(number):]
}

// ParseNumber reads a number with a decimal point, a fraction "1/2", "½", or both "1 1/2", and
// gives the decimals written. A decimal comma is refused with the fix.
func ParseNumber(text string) (float64, int, error) {
	if strings.Contains(text, ",") {
		return 0, 0, comma(text)
	}
	whole := 0.0
	plain := vulgar.Replace(text)
	if m := mixedForm.FindStringSubmatch(text); m != nil && m[0] == text {
		whole, _ = strconv.ParseFloat(m[1], 64)
		plain = vulgar.Replace(m[2] + m[3])
	}
	if over, under, isFraction := strings.Cut(plain, "/"); isFraction {
		a, errA := strconv.ParseFloat(over, 64)
		b, errB := strconv.ParseFloat(under, 64)
		if errA != nil || errB != nil || b == 0 {
			return 0, 0, wrong(fmt.Sprintf("%q is not a fraction", text), "write it like 1/2")
		}
		return whole + a/b, 2, nil
	}
	v, err := strconv.ParseFloat(plain, 64)
	if err != nil || math.IsInf(v, 0) || math.IsNaN(v) {
		return 0, 0, wrong(fmt.Sprintf("%q is not a number", clip(text)), "write it like 12.5")
	}
	_, after, _ := strings.Cut(plain, ".")
	return v, len(after), nil
}

var (
	oneComma  = regexp.MustCompile(`^([0-9]*),([0-9]+)$`)
	thousands = regexp.MustCompile(`^[0-9]{1,3}(,[0-9]{3})+(\.[0-9]*)?$`)
	points    = regexp.MustCompile(`^[0-9]{1,3}(\.[0-9]{3})+,[0-9]+$`)
)

// comma refuses a number with a comma and gives it with a point. Three digits after one comma are
// thousands to some and decimals to others.
func comma(text string) error {
	what := fmt.Sprintf("%q has a comma", text)
	m := oneComma.FindStringSubmatch(text)
	switch {
	case thousands.MatchString(text) && m != nil && m[1][0] != '0':
		return rewrite(fmt.Sprintf("%q is a thousand to some and decimals to others", text), m[1]+m[2], m[1]+"."+m[2])
	case m != nil && m[1] == "":
		return rewrite(what, "0."+m[2])
	case m != nil:
		return rewrite(what, m[1]+"."+m[2])
	case thousands.MatchString(text):
		return rewrite(what, strings.ReplaceAll(text, ",", ""))
	case points.MatchString(text):
		return rewrite(what, strings.Replace(strings.ReplaceAll(text, ".", ""), ",", ".", 1))
	}
	return wrong(what, "write it with a decimal point, like 12.5")
}
