package sheet

import (
	"sipsum/internal/batch"
	"sipsum/internal/clean"
	"sipsum/internal/note"
)

// when says when a pot is made, and how cold it is kept; 0: nobody says.
func when(pot batch.Pot, celsius float64) string {
	before := ""
	if len(pot.Before) > 0 {
		before = clean.Listed(cleaned(pot.Before))
	}
	cold := ""
	if celsius != 0 {
		cold = say("batch.kept", note.Grams(celsius))
	}
	switch {
	case pot.Glass && glassesOf(pot) > 1:
		return say("batch.glasses", pieces(glassesOf(pot)))
	case pot.Glass:
		return say("batch.glass")
	case pot.Keeps == nil && before != "":
		return say("batch.with", before)
	case pot.Keeps == nil:
		return say("batch.today")
	case pot.UseUp == 0:
		return say("batch.hours", note.Grams(pot.Keeps.Days*hours)) + cold
	case pot.UseUp == 1 && before == "":
		return say("batch.day") + cold
	case pot.UseUp == 1:
		return say("batch.day.of", before) + cold
	case before != "":
		return say("batch.before", daysText(pot.UseUp-1), before) + cold
	}
	return say("batch.ahead", daysText(pot.UseUp-1), note.Grams(pot.UseUp)) + cold
}

// keepingLines say why a pot keeps less than its file says.
func keepingLines(pot batch.Pot) []Line {
	var lines []Line
	if pot.Oldest != "" {
		lines = append(lines, Line{Text: say("batch.oldest", clean.Name(pot.Oldest))})
	}
	if pot.Cut {
		lines = append(lines, Line{Text: say("batch.cut", note.Grams(pot.Keeps.Days), note.Grams(pot.UseUp))})
	}
	return lines
}

// colds are the °C at which each pot is kept, as its file says and a code allows; 0: nobody says.
func colds(s *Sheet) map[string]float64 {
	cold := map[string]float64{}
	for _, x := range s.Log().Batches {
		cold[x.Name] = x.Cold
	}
	return cold
}

func cleaned(names []string) []string {
	list := make([]string, len(names))
	for i, name := range names {
		list[i] = clean.Name(name)
	}
	return list
}

func daysText(n float64) string {
	if n == 1 {
		return "1 day"
	}
	return note.Grams(n) + " days"
}

// Allowed gives the days in which each component of a drink is used up by a code.
func Allowed(s *Sheet) map[string]float64 {
	days := map[string]float64{}
	for _, b := range s.Log().Batches {
		days[b.Name] = b.Days
	}
	return days
}

const (
	hours       = 24
	worthSaying = 1 // g that are left over
)

func potCaption(pot batch.Pot) string {
	switch w := pot.Whole; {
	case w == nil:
		return say("batch.times", note.Grams(pot.Times))
	case w.Kept:
		return say("batch.whole.kept", say("batch."+w.Of), pieces(pot.Times))
	case w.Glasses == 0:
		return say("batch.whole.pots", say("batch."+w.Of), pieces(pot.Times))
	case w.Glasses < 1:
		return say("batch.whole.several", say("batch."+w.Of), pieces(pot.Times), pieces(1/w.Glasses))
	default:
		return say("batch.whole.kept", say("batch."+w.Of), pieces(pot.Times))
	}
}

// glassesOf is how many glasses one of what is made as the glasses are built fills.
func glassesOf(pot batch.Pot) float64 {
	if pot.Shot != nil {
		return pot.Shot.Glasses
	}
	return pot.Whole.Glasses
}

// shotText says how often a coffee is pulled.
func shotText(s batch.Shot) string {
	return say("batch.shot", pieces(s.Count), note.Grams(s.Grams))
}
