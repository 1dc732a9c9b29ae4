package speech

import (
	"regexp"
	"strings"

	"sipsum/internal/clean"
	"sipsum/internal/constituent"
	"sipsum/internal/source"
)

var (
	code    = regexp.MustCompile(`[\pL\d_~-]:[\pL\d]`)
	free    = regexp.MustCompile(`(?i)\bfree[ -](from|of)\b|\pL-free\b`)
	capital = regexp.MustCompile(`\b[A-Z][A-Z0-9]+\b`)
	slip    = regexp.MustCompile(`NaN|[+-]?Inf\b|%!|[{}]`)
)

// unspeakable says why a sentence is not spoken as it stands; empty: it is.
func unspeakable(text string) string {
	switch {
	case code.MatchString(text):
		return "it holds a code"
	case strings.Contains(text, "†") || strings.Contains(strings.ToLower(text), source.FromMemory):
		return "nobody has seen it in print"
	case free.MatchString(text):
		return "that nothing of a kind is in a drink nobody can say"
	case slip.MatchString(text):
		return "it has a gap"
	}
	for _, word := range capital.FindAllString(text, -1) {
		if _, ok := constituent.Find(word); ok {
			return "it holds a tagname"
		}
	}
	return ""
}

// aloud writes a sentence as it is read: signs as words, a capital first, an end.
func aloud(text string) string {
	text = clean.UpperFirst(strings.TrimSpace(clean.Prose(signs.Replace(text))))
	if text != "" && !strings.ContainsAny(text[len(text)-1:], ".!?") {
		text += "."
	}
	return text
}

var signs = strings.NewReplacer(" %", " percent", "≥ ", "at least ", "≤ ", "at most ", " & ", " and ", " ± ", " plus or minus ")
