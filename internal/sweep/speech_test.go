package sweep_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/sheet"
	"sipsum/internal/speech"
)

var (
	notSpoken    = regexp.MustCompile(`(?i)\b[a-z_~-]+:[a-z0-9]|†|from memory|\bfree[ -](from|of)\b|[a-z]-free\b|\bNaN\b|\bInf\b|%!|[{}]`)
	spokenAmount = regexp.MustCompile(`(?:(about|at least|at most) (\d+(?:\.\d+)?)|(\d+(?:\.\d+)?) to (\d+(?:\.\d+)?))`)
)

// whatIsSpokenIsBorne holds a speech to its time, its words, and its figures.
func whatIsSpokenIsBorne(s *subject, broken say) {
	for _, register := range speech.Registers {
		said := sheet.SpeechOf(s.sheet, register)
		words := 0
		for _, l := range said.Lines {
			words += l.Words
			s.spokenPlainly(l, broken)
			s.spokenWithin(l, broken)
			if register == speech.Guest && l.Figure != nil {
				broken(1, "a guest is told a figure: %q", l.Text)
			}
			if own := len(strings.Fields(l.Text)); l.Words < own {
				broken(float64(own-l.Words), "%q has %d words, not %d", l.Text, own, l.Words)
			}
		}
		if seconds := float64(words) / limit("slow speech") * 60; words != said.Words || seconds > limit("speech seconds") {
			broken(seconds, "%s: %d words, said to be %d: %.0f s", register, words, said.Words, seconds)
		}
		s.toldForSafety(said, broken)
	}
}

// spokenPlainly: no code, no sign, no tagname, and a source that somebody has seen.
func (s *subject) spokenPlainly(l speech.Line, broken say) {
	if bad := notSpoken.FindString(l.Text); bad != "" {
		broken(1, "%q is spoken in %q", bad, l.Text)
	}
	for _, word := range regexp.MustCompile(`[A-Za-z0-9]+`).FindAllString(l.Text, -1) {
		if _, is := constituent.Find(word); is && len(word) > 1 && strings.ToUpper(word) == word {
			broken(1, "the tagname %s is spoken in %q", word, l.Text)
		}
	}
	if len(l.Sources) == 0 {
		broken(1, "%q has no source", l.Text)
	}
	for _, w := range l.Sources {
		if w.Citation == "" || strings.Contains(w.Citation, "from memory") {
			broken(1, "%q rests on %q", l.Text, w.Citation)
		}
	}
}

// spokenWithin: what is said of a figure holds from its lower end to its upper end with all that
// is unknown at its most, and is said with the numbers that stand in the text.
func (s *subject) spokenWithin(l speech.Line, broken say) {
	t := l.Figure
	if t == nil {
		return
	}
	low, high := l.Of.Low, l.Of.UpTo
	if f, ok := s.spokenOf(l); ok {
		low, high = f.Low, f.UpTo
		if isNumber(high) && high < math.Max(f.High, f.WithBounds)*(1-rounding) {
			broken(f.High-high, "%q: up to %g, high %g, with bounds %g", l.Text, high, f.High, f.WithBounds)
		}
	}
	if l.Of.Unit == "mg" && t.Unit == "g" {
		low, high = low/1000, high/1000
	}
	if t.Low > low*(1+1e-6) {
		broken(t.Low-low, "%q: the lower end is %g", l.Text, low)
	}
	if isNumber(t.High) && (!isNumber(high) || t.High < high*(1-1e-6)) {
		broken(t.Low, "%q: the upper end with all that is unknown is %g", l.Text, high)
	}
	m := spokenAmount.FindStringSubmatch(l.Text)
	if m == nil {
		broken(1, "%q has no amount", l.Text)
		return
	}
	first, _ := strconv.ParseFloat(m[2]+m[3], 64)
	second, _ := strconv.ParseFloat(m[4], 64)
	near := func(x, y float64) bool { return math.Abs(x-y) <= 1e-9*math.Max(1, math.Abs(y)) }
	ok := map[string]bool{
		"about": near(first, (t.Low+t.High)/2) && t.High-t.Low <= first/9, "": near(first, t.Low) && near(second, t.High),
		"at least": near(first, t.Low) && math.IsInf(t.High, 1), "at most": near(first, t.High) && t.Low == 0,
	}[m[1]]
	if !ok {
		broken(1, "%q says another range than %g to %g", l.Text, t.Low, t.High)
	}
	for _, n := range m[2:] {
		if digits := strings.Trim(strings.Replace(n, ".", "", 1), "0"); len(digits) > 2 {
			broken(1, "%q says %s, which has more than two digits", l.Text, n)
		}
	}
}

// spokenOf finds the figure of the serving that a sentence is of, by its words.
func (s *subject) spokenOf(l speech.Line) (composition.Figure, bool) {
	for _, f := range s.assay.PerServing {
		words := sheet.WordsFor(f.Constituent)
		if l.Kind == "figure" && strings.HasSuffix(l.Text, " of "+words+".") || l.Kind == "figure.more" && strings.HasPrefix(l.Text, "Of "+words+" there are ") {
			return f, true
		}
	}
	return composition.Figure{}, false
}

// toldForSafety: every allergen is told, or that there is a list; a caution that is not is
// replaced by a word that there is more.
func (s *subject) toldForSafety(said speech.Speech, broken say) {
	var text strings.Builder
	more := false
	for _, l := range said.Lines {
		text.WriteString(strings.ToLower(l.Text) + " ")
		more = more || l.Kind == speech.More
	}
	b := sheet.BriefOf(s.sheet)
	for _, name := range slices.Concat(b.Guest.Contains, b.Guest.MayContain) {
		if !strings.Contains(text.String(), strings.ToLower(name)) && !strings.Contains(text.String(), "ask for the list") {
			broken(1, "%s is not told of the allergen %q", said.Register, name)
		}
	}
	if len(b.Guest.Check) > 0 && !strings.Contains(text.String(), "still to be checked") {
		broken(1, "%s is not told that something is to be checked", said.Register)
	}
	kitchen := map[string]bool{} // a guest has nothing to do with it
	for _, row := range rowsOf("card_words.csv") {
		if code, ok := strings.CutPrefix(row["key"], "advice."); ok && row["text"] == "" {
			kitchen[code] = true
		}
	}
	for _, c := range b.Guest.Cautions {
		if said.Register == speech.Guest && c.Words != "" && !kitchen[c.Code] && !more && !strings.Contains(text.String(), strings.ToLower(c.Words)) {
			broken(1, "a guest is not told: %s", c.Words)
		}
	}
}
