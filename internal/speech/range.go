package speech

import (
	"math"
	"strconv"
	"strings"
)

// Range is a figure as it may be told: its lower end, and its upper end with all that nobody
// knows at its most. UpTo is NaN where nothing bounds it.
type Range struct {
	Low, UpTo float64
	Unit      string // g, mg, % or none
}

// Told is a range as it is said: the figure is between the two; High is +Inf where it is "at least".
type Told struct {
	Low, High float64
	Unit      string
	Words     string
}

const (
	parts    = 4    // of a range that rounding may take from it
	decade   = 10   // of digits
	digits   = 2    // that anybody hears
	hair     = 1e-9 // what arithmetic leaves of a whole step
	toLarger = 1000 // mg in a g
)

// inWords are units as they are spoken.
var inWords = map[string]string{"g": "grams", "mg": "milligrams", "%": "percent", "": ""}

// tell rounds a range outwards and puts it into words; ok is false where it says nothing.
func (r Range) tell() (t Told, ok bool) {
	if r.Unit == "mg" && max(r.Low, r.UpTo) >= toLarger {
		r = Range{r.Low / toLarger, r.UpTo / toLarger, "g"}
	}
	unit, spoken := inWords[r.Unit]
	if !spoken || math.IsNaN(r.Low) || r.Low < 0 || r.Low > r.UpTo || r.UpTo <= 0 || math.IsInf(r.UpTo, 0) {
		return Told{}, false
	}
	if math.IsNaN(r.UpTo) {
		step := lastOf(r.Low, digits)
		t = Told{Low: downTo(r.Low, step), High: math.Inf(1), Unit: r.Unit}
		t.Words = aloudAs("amount.least", map[string]string{"low": written(t.Low, step), "unit": unit})
		return t, t.Low > 0
	}
	if step := lastOf(r.UpTo, digits); nearest(r.Low, step) == nearest(r.UpTo, step) {
		about := nearest(r.Low, step)
		t = Told{Low: about - step/2, High: about + step/2, Unit: r.Unit}
		t.Words = aloudAs("amount.about", map[string]string{"low": written(about, step), "unit": unit})
		return t, about > 0
	}
	step := max(math.Pow(decade, math.Floor(math.Log10((r.UpTo-r.Low)/parts))), lastOf(r.UpTo, digits))
	t.Unit = r.Unit
	// guard: what is spoken holds the figure
	t.Low, t.High = downTo(r.Low, step), upTo(r.UpTo, step)
	if t.Low <= 0 {
		t.Low, t.Words = 0, aloudAs("amount.most", map[string]string{"high": written(t.High, step), "unit": unit})
		return t, true
	}
	t.Words = aloudAs("amount.between", map[string]string{"low": written(t.Low, step), "high": written(t.High, step), "unit": unit})
	return t, true
}

// MayBeNone reports whether nothing but an end above is told of a range: "at most".
func (r Range) MayBeNone() bool {
	t, ok := r.tell()
	return ok && t.Low <= 0
}

// lastOf is one in the last of so many digits of a figure.
func lastOf(x float64, digits int) float64 {
	if x <= 0 {
		return 1
	}
	return math.Pow(decade, math.Floor(math.Log10(x))-float64(digits-1))
}

func nearest(x, step float64) float64 { return math.Round(x/step) * step }
func downTo(x, step float64) float64  { return math.Floor(x/step*(1+hair)) * step }
func upTo(x, step float64) float64    { return math.Ceil(x/step*(1-hair)) * step }

// written writes a figure with the decimals of its step.
func written(x, step float64) string {
	decimals := max(0, int(math.Round(-math.Log10(step))))
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Contains(text, ".") {
		text = strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
	}
	return text
}
