package unit

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// What to say of a text that begins with no number, or has no unit after it.

var (
	about   = regexp.MustCompile(`(?i)^(?:~|≈|ca\.?|circa|about|approx\.?|approximately|around) ?([0-9½⅓⅔¼¾].*)$`)
	toFill  = regexp.MustCompile(`(?i)^(?:to )?(?:top|fill)(?: up)?(?: with)?(?: of)? (\S.*)$`)
	article = regexp.MustCompile(`(?i)^(?:an?|one) `)
)

const unsure = "if you know by how much it may be off, write that too, such as 36 g ± 2 g"

// noNumber refuses a text that does not begin with a number: "about 36 g", "a pinch of salt",
// "espresso 36 g", or a food alone.
func (s *scan) noNumber() error {
	text := strings.TrimSpace(s.rest)
	if positive := strings.TrimLeft(text, "-−– "); positive != text && s.rest == s.whole {
		if a, food, err := parseAmount(positive); err == nil && a.Number > 0 && food != "" {
			return (&Misread{What: fmt.Sprintf("%q is less than nothing", clip(text)), Write: []string{positive}, Do: "what is taken out again is a step: strain or steep"}).fault()
		}
	}
	if m := toFill.FindStringSubmatch(text); m != nil && s.rest == s.whole {
		return wrong(fmt.Sprintf("%q does not say how much that is", clip(text)), "weigh what it takes and write: … g "+clip(m[1]))
	}
	what := fmt.Sprintf("%q does not begin with an amount", clip(text))
	if m := about.FindStringSubmatch(text); m != nil {
		return (&Misread{What: fmt.Sprintf("%q does not say by how much it may be off", clip(text)), Write: []string{s.whole[:len(s.whole)-len(s.rest)] + m[1]}, Do: unsure}).fault()
	}
	if s.rest != s.whole {
		return wrong(what, "write a number and a unit, such as 36 g")
	}
	plain := article.ReplaceAllString(text, "")
	if word, _, ok := cutMeasure(plain); ok {
		food := strings.TrimPrefix(strings.TrimSpace(plain[len(word):]), "of ")
		return rewrite(what, strings.TrimSpace("1 "+word+" "+food))
	}
	if amount, food, ok := amountLast(text); ok {
		return rewrite(what, amount+" "+food)
	}
	return (&Misread{What: what, Alone: true, Do: "write how much before it, such as \"36 g " + clip(text) + "\""}).fault()
}

// amountLast finds the amount at the end of a text: "espresso 36 g".
func amountLast(text string) (amount, food string, ok bool) {
	for i, c := range text {
		if c != ' ' || i == 0 {
			continue
		}
		if a, rest, err := parseAmount(text[i+1:]); err == nil && rest == "" && a.Number > 0 {
			return text[i+1:], strings.Trim(text[:i], " :,="), true
		}
	}
	return "", "", false
}

// noUnit refuses a number that no unit follows.
func (s *scan) noUnit() error {
	number := strings.TrimSpace(s.whole[:len(s.whole)-len(s.rest)])
	rest := strings.TrimSpace(s.rest)
	word, after, _ := strings.Cut(rest, " ")
	switch plain := squeeze(strings.TrimRight(word, ",;:")); {
	case rest == "":
		return wrong(fmt.Sprintf("%q has no unit", clip(number)), "write one of "+strings.Join(measureNames(), " "))
	case plain == "oz" || plain == "ounce" || plain == "ounces":
		return (&Misread{
			What: fmt.Sprintf("%q is a mass to some and a volume to others", clip(word)), Write: []string{strings.TrimSpace(number + " fl-oz " + after)},
			Do: "that is the US fluid ounce; weighed, it is in g",
		}).fault()
	case strings.Contains(word, ":"):
		return wrong(fmt.Sprintf("%q has no unit after %s", clip(word), number), fmt.Sprintf("write what it weighs: \"%s g %s\" if those are grams, or use portion and count", number, clip(rest)))
	}
	if trimmed := strings.TrimRight(word, ",;:"); trimmed != word {
		if _, ok := FindMeasure(trimmed); ok {
			return rewrite(fmt.Sprintf("%q is not read as a unit", clip(word)), strings.TrimSpace(number+" "+trimmed+" "+after))
		}
	}
	if counted := wordLater(rest); counted != "" {
		return rewrite(fmt.Sprintf("%q is no unit", clip(word)), number+" "+counted)
	}
	return wrong(fmt.Sprintf("unknown unit %q", clip(word)), fmt.Sprintf("write what it weighs: … g %s; the units are %s", clip(foodAfter(word, after)), strings.Join(measureNames(), " ")))
}

// foodAfter gives the food after a word that is no unit. What a bar measures by is left out, as is
// any word before a food of a table or an "of".
func foodAfter(word, after string) string {
	food, of := strings.CutPrefix(after, "of ")
	first, _, _ := strings.Cut(after, " ")
	if food != "" && (of || strings.Contains(first, ":") || slices.Contains(barWords, strings.TrimSuffix(strings.ToLower(word), "s"))) {
		return food
	}
	return strings.TrimSpace(word + " " + after)
}

// barWords are measures of a bar that every bar fills otherwise.
var barWords = []string{"shot", "jigger", "part", "pony", "measure", "splash", "glug", "scoop", "handful", "knob", "nip", "float", "ladle", "glass", "can", "bottle"}

// wordLater puts the word that counts before the food that is counted: "mint leaves".
func wordLater(rest string) string {
	words := strings.Fields(rest)
	for i, word := range words {
		if _, ok := PortionWord(word); ok && i > 0 && i <= 2 {
			food := append(words[:i:i], words[i+1:]...)
			if code := slices.IndexFunc(food, func(w string) bool { return strings.Contains(w, ":") }); code > 0 {
				food = food[code:]
			}
			return word + " " + strings.Join(food, " ")
		}
	}
	return ""
}
