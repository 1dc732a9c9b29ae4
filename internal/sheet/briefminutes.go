package sheet

import (
	"math"
	"strings"

	"sipsum/internal/chemistry"
	"sipsum/internal/clean"
	"sipsum/internal/drink"
	"sipsum/internal/minutes"
)

// goes says what a glass does over ten minutes, as far as that is worth a word (data/minutes.csv): how warm it gets, how
// much gas it loses, what its ice makes of it; and how long the first glass stands. Empty: nothing is worth it.
func (s briefing) goes() string {
	t := TenMinutesOf(s.Sheet)
	if t == nil {
		return ""
	}
	var list []string
	for _, r := range t.Rows {
		a := t.Course.Axis(r.Key)
		first, last := r.Cells[0], r.Cells[len(r.Cells)-1]
		if last.Unknown || !s.worthAWord(a.Key, a.Points[0], a.Last()) {
			continue
		}
		text := first.Number + " → " + last.Number + " " + r.Unit
		if last.Low != "" {
			text += " (" + last.Low + " to " + last.High + ")"
		}
		switch a.Key {
		case minutes.Gas:
			text = say("minutes.brief.co2", text)
		case minutes.Melted:
			text = say("minutes.brief.melted", joined(last.Number, r.Unit))
		}
		list = append(list, text)
	}
	var sentences []string
	if len(list) > 0 {
		sentences = append(sentences, say("minutes.brief", strings.Join(list, ", ")))
	}
	if c := t.Course.Clock; c != nil && c.Waited() > 0 {
		sentences = append(sentences, say("minutes.brief.stood", watch(c.Waited())))
	}
	return clean.UpperFirst(strings.Join(sentences, "; "))
}

// WaitsAsStated reports whether a file says how its glasses stand, or how long a step of finish takes.
func WaitsAsStated(d *drink.Drink) bool { return d.Stands != nil || len(d.Tasks) > 0 }

// worthAWord reports whether what a figure does is worth a word on a brief.
func (s briefing) worthAWord(key string, first, last chemistry.Estimate) bool {
	change := math.Abs(last.Mean - first.Mean)
	switch key {
	case minutes.Temperature:
		return change >= minutes.Worth("temperature")
	case minutes.Gas:
		return change >= minutes.Worth("gas")*first.Mean
	case minutes.Melted:
		return change >= minutes.Worth("melt")*s.Assay.Mass.Mean
	}
	return false
}
