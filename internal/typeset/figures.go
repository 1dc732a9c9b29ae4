package typeset

import (
	"regexp"
	"slices"
	"strings"
)

// groups splits a text at its spaces into what may stand at the end of a line: words, and
// figures with all that belongs to them.
func groups(text string) []string {
	words := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == glue })
	var list []string
	rest := text
	for i, word := range words {
		at := strings.Index(rest, word)
		joint := strings.ReplaceAll(rest[:at], " ", "")
		rest = rest[at+len(word):]
		switch {
		case i == 0: // what is set in by glue stays so
			list = append(list, joint+word)
		case joint != "":
			list[len(list)-1] += joint + word
		case together(words, i):
			list[len(list)-1] += " " + word
		default:
			list = append(list, word)
		}
	}
	return list
}

// glue joins words that a writer wants on one line: a no-break space.
const glue = '\u00a0'

// The forms of words that figures are made of. What closes a sentence or a bracket ends a
// figure too.
var (
	number    = formOf(`^[(\[“"~<>≥≤±×−+-]*\d[\d.,/–\x{2009}]*$`)
	numeral   = formOf(`^[(\[“"~<>≥≤±×−+-]*\d`)
	bracketed = formOf(`^\([−-]?\d[\d.,–\x{2009}]*[);,]*[.,;:]?$`)
	thousands = formOf(`(^|[^\d.,])\d{1,3}$`)
	hundreds  = formOf(`^\d{3}(\D|$)`)
)

// form is one that holds a digit, as most words do not: they are told from it without a look at the rest.
type form struct{ pattern *regexp.Regexp }

func formOf(pattern string) form { return form{regexp.MustCompile(pattern)} }

// MatchString reports whether a word has the form.
func (f form) MatchString(word string) bool {
	return strings.ContainsAny(word, "0123456789") && f.pattern.MatchString(word)
}

// before are the words that belong to the number behind them, pairs two of them, and units
// those that belong to the number before them; ratio is a unit with another figure at once
// behind it.
var (
	ratio  = formOf(`^[^\s\d/]+/\d`) // "2 000 kJ/480 kcal"
	before = []string{"≥", "≤", "<", ">", "±", "×", "→", "=", "−", "about", "pH", "to", "most", "least", "than", "day", "/"}
	pairs  = []string{"up to", "to about", "at most", "at least", "less than", "more than"}
	units  = strings.Fields(`% g kg mg µg ml cl dl l kJ kcal °C °Bx °Brix h min s bar atm mol mmol g/ml g/l mg/l mol/l mmol/l g/kg mg/kg g/100 mg/100 µg/100
		day days hour hours minute minutes week weeks draws volumes times servings`)
)

// together reports whether a line may not end before a word: whether it and the one before
// are parts of one figure.
func together(words []string, i int) bool {
	a, b := words[i-1], words[i]
	opened, closed := strings.TrimLeft(a, "([“"), strings.TrimRight(b, ".,;:)]”")
	switch {
	case number.MatchString(a) && (slices.Contains(units, closed) || ratio.MatchString(b) || b == "±" || b == "/" || b == "×"), // "36 g", "36 ± 2", "3 / 4"
		number.MatchString(a) && bracketed.MatchString(b),         // "4.12 (3.93–4.37)"
		slices.Contains(before, opened) && numeral.MatchString(b), // "≥ 480", "to 8.1"
		slices.Contains(pairs, opened+" "+b) && i+1 < len(words) && (numeral.MatchString(words[i+1]) || words[i+1] == "about"),
		thousands.MatchString(a) && hundreds.MatchString(b), // "8 400"
		strings.HasSuffix(a, "/100") && slices.Contains([]string{"g", "ml"}, closed):
		return true
	case b == "and" && i > 1 && words[i-2] == "between": // "between 2.0 and 4.5"
		return number.MatchString(a) && i+1 < len(words) && numeral.MatchString(words[i+1])
	case a == "and":
		return i > 2 && words[i-3] == "between" && number.MatchString(words[i-2]) && numeral.MatchString(b)
	case b == "to": // "5.21 to 5.97", "57 °C to 21 °C"
		return number.MatchString(a) && i+1 < len(words) && numeral.MatchString(words[i+1])
	case slices.Contains(units, a): // "57 % (55–59)", "5 % vol", "195 kJ / 46 kcal", "36 g ± 2 g"
		numbered := i > 1 && number.MatchString(words[i-2]) || i > 2 && strings.HasSuffix(words[i-2], "/100") && number.MatchString(words[i-3])
		return numbered && (bracketed.MatchString(b) || closed == "vol" || b == "/" || b == "±")
	}
	return false
}
