package sheet

import (
	"math"
	"slices"
	"strings"

	"sipsum/internal/chemistry"
	"sipsum/internal/clean"
	"sipsum/internal/composition"
	"sipsum/internal/figure"
	"sipsum/internal/minutes"
)

// TenMinutes is how a glass goes while it stands, as it is printed.
type TenMinutes struct {
	Course *minutes.Course
	Heads  []string // of the columns: minutes after the pour
	Rows   []TimeRow
	Lines  []TimeLine // what stays, what is not told, when glasses are ready, what was taken
}

// TimeRow is a figure that changes: its name, a cell for each time; a cell without a number is not told.
type TimeRow struct {
	Key, Name, Unit string
	Cells           []figure.Shown
}

// TimeLine is a sentence, and where it comes from.
type TimeLine struct {
	Text    string
	Sources []string
}

// CourseOf is how a glass goes while it stands; nil where its chemistry was not asked for, and of a sheet that was not built.
func CourseOf(s *Sheet) *minutes.Course {
	if s.course == nil {
		return nil
	}
	return s.course()
}

// TenMinutesOf tells how a glass goes; nil where its chemistry was not asked for, or it is no liquid.
func TenMinutesOf(s *Sheet) *TenMinutes {
	c := CourseOf(s)
	if c == nil || c.Why != "" {
		return nil
	}
	t := &TenMinutes{Course: c}
	for _, at := range c.Times {
		t.Heads = append(t.Heads, minutesAfter(at))
	}
	var still []string
	for i := range c.Axes {
		a := &c.Axes[i]
		hardly := a.Key == minutes.Acidity && a.Points[0].High < chemistry.HardlySour // less than a burette reads
		if a.Points[0].Why != "" || hardly {
			continue
		}
		if row := timeRow(a); row.moves() {
			t.Rows = append(t.Rows, row)
		} else if a.Last().Why == "" {
			still = append(still, row.Name)
		}
	}
	t.add(steady(still))
	for _, text := range untold(c) {
		t.add(text)
	}
	if c.Unpaid {
		t.add(say("minutes.unpaid"))
	}
	t.add(clockWords(c.Clock))
	for _, text := range hanging(s, t.Rows) {
		t.add(text)
	}
	t.Lines = append(t.Lines, taken(c)...)
	return t
}

func (t *TenMinutes) add(text string) {
	if text != "" {
		t.Lines = append(t.Lines, TimeLine{Text: text})
	}
}

// minutesAfter writes whole minutes as such, others as a watch shows them.
func minutesAfter(at float64) string {
	if at == math.Trunc(at) {
		return figure.Plain(at)
	}
	return watch(at)
}

// watch writes minutes as a watch shows them.
func watch(at float64) string {
	const seconds = 60
	all := int(math.Round(at * seconds))
	left := figure.Plain(float64(all % seconds))
	if len(left) < 2 {
		left = "0" + left
	}
	return figure.Plain(float64(all/seconds)) + ":" + left
}

// axisWords names an axis.
func axisWords(key string) string { return say("minutes." + key) }

// timeUnit is the unit of an axis; grams in 100 g are per cent.
func timeUnit(a *minutes.Axis) string {
	r := a.Points[0].Result
	switch {
	case a.Key == minutes.PH, a.Key == minutes.Brix:
		return ""
	case ShortUnits[r.Unit] != "":
		return ShortUnits[r.Unit]
	}
	return r.Unit
}

// timeRow writes all points of an axis to one place, so that the eye sees what changes: the coarsest that one of
// them is worth.
func timeRow(a *minutes.Axis) TimeRow {
	row := TimeRow{Key: a.Key, Name: axisWords(a.Key), Unit: timeUnit(a)}
	last, first := math.MinInt, true
	for i, p := range a.Points {
		if p.Why == "" && (i > 0 || p.SD > 0) && p.Mean != 0 {
			if at := figure.Place(p.Mean, p.SD, figure.MostDigits); first || at > last {
				last, first = at, false
			}
		}
	}
	if first {
		last = 0
	}
	for _, p := range a.Points {
		if p.Why != "" {
			row.Cells = append(row.Cells, figure.Shown{Unknown: true})
			continue
		}
		cell := figure.Shown{Number: properly(figure.Rounded(p.Mean, last)), Unit: row.Unit}
		if figure.Span(p.Low, p.High, last) != "" {
			cell.Low, cell.High = properly(figure.Rounded(p.Low, last)), properly(figure.Rounded(p.High, last))
		}
		row.Cells = append(row.Cells, cell)
	}
	return row
}

// properly gives a number its proper sign; nothing has none.
func properly(number string) string {
	if strings.Trim(number, "-0.") == "" {
		return strings.TrimPrefix(number, "-")
	}
	return strings.Replace(number, "-", "−", 1)
}

// moves reports whether it changes by what is printed.
func (r TimeRow) moves() bool {
	return slices.ContainsFunc(r.Cells, func(c figure.Shown) bool { return !c.Unknown && c.Number != r.Cells[0].Number })
}

// steady tells what stays as it is at the pour.
func steady(names []string) string {
	switch len(names) {
	case 0:
		return ""
	case 1:
		return say("minutes.steady.one", clean.UpperFirst(names[0]))
	}
	return say("minutes.steady", clean.UpperFirst(clean.Listed(names)))
}

// untold says what is not told, why, and what to write; a reason that several share once.
func untold(c *minutes.Course) []string {
	var list []string
	said := map[string]bool{}
	for i := range c.Axes {
		a := &c.Axes[i]
		p := a.Last()
		if p.Why == "" || said[p.Why] {
			continue
		}
		said[p.Why] = true
		text := say("minutes.untold", axisWords(a.Key), p.Why)
		if a.Write != "" {
			text += " " + say("minutes.write", a.Write)
		}
		list = append(list, text)
	}
	return list
}

// clockWords tell when the glasses are ready.
func clockWords(c *minutes.Clock) string {
	if c == nil {
		return ""
	}
	text := say("minutes.ready", watch(c.Last))
	switch {
	case c.Waited() > 0 && c.First < c.Last:
		text = say("minutes.stood", watch(c.First), watch(c.Last), watch(c.Stood))
	case c.Waited() > 0:
		text += " " + say("minutes.waited", watch(c.Waited()))
	}
	if c.Over > 0 {
		text += " " + say("minutes.over", watch(c.Over))
	}
	return text
}

// hanging tells which claims ask for a figure that goes: they are judged at the pour.
func hanging(s *Sheet, rows []TimeRow) []string {
	asked := map[string]string{minutes.PH: "ph(", minutes.Acidity: "ta(", minutes.Brix: "brix("}
	var list []string
	for _, c := range s.Said {
		for _, r := range rows {
			word, first, last := asked[r.Key], r.Cells[0], r.Cells[len(r.Cells)-1]
			if word != "" && strings.Contains(c.Check, word) && !last.Unknown && first.Number != last.Number {
				list = append(list, say("minutes.hangs", strings.TrimSuffix(clean.Prose(c.Say), "."), r.Name, joined(first.Number, r.Unit), joined(last.Number, r.Unit)))
			}
		}
	}
	return list
}

// taken tells by which rates the glass was followed: those of the file, then those that it leaves open.
func taken(c *minutes.Course) []TimeLine {
	var stated, open, better []string
	var sources []string
	for _, r := range c.Rates {
		key := "minutes.rate." + strings.ReplaceAll(r.Name, " ", "-")
		w := Written{Shown: figure.Of(inHundredths(r.Result))}
		text := say(key, w.Sentence(), figure.Plain(minutes.Serving())+" g")
		if r.Stated {
			stated = append(stated, text)
			continue
		}
		open, sources = append(open, text), append(sources, r.Source)
		if _, ok := cardWords()[key+".write"]; ok {
			better = append(better, say(key+".write", w.Bare()))
		}
	}
	var list []TimeLine
	if len(stated) > 0 {
		list = append(list, TimeLine{Text: say("minutes.stated", strings.Join(stated, "; "))})
	}
	if len(open) > 0 {
		list = append(list, TimeLine{say("minutes.taken", strings.Join(open, "; ")), sources})
	}
	if len(better) > 0 {
		list = append(list, TimeLine{Text: say("minutes.better", strings.Join(better, ", "))})
	}
	return list
}

// inHundredths gives a share, or a rate of shares, in hundredths.
func inHundredths(r composition.Result) composition.Result {
	unit, ok := map[string]string{"1": "%", "1/min": "%/min"}[r.Unit]
	if !ok {
		return r
	}
	const hundred = 100
	r.Unit, r.Mean, r.SD, r.Low, r.High = unit, hundred*r.Mean, hundred*r.SD, hundred*r.Low, hundred*r.High
	return r
}

// MinutesHead is over the minutes, MinutesColumns behind their columns.
func MinutesHead() string { return say("minutes.head") }

// MinutesColumns says what the columns of the minutes are.
func MinutesColumns() string { return say("minutes.columns") }
