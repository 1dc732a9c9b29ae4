package textreport

import (
	"math"
	"strings"

	"sipsum/internal/recipe"
)

// cleanPart gives the name of a part for a page. The code in brackets, where there is
// one, tells it from others: it stays however long the name is.
func cleanPart(id recipe.PartID, name string) string {
	name, code := Clean(name, math.MaxInt), " ("+Clean(id.Food.String(), mostName)+")"
	if head, found := strings.CutSuffix(name, code); found {
		return Clean(head, mostName) + code
	}
	return Clean(name, mostName)
}

// fitParts fits the names of parts into n columns so that each is still another: of
// names that begin alike the end is kept.
func fitParts(parts []part, n int) []string {
	names, alike := make([]string, len(parts)), map[string]int{}
	for i, k := range parts {
		names[i] = fit(k.name, n)
		alike[names[i]]++
	}
	for i, k := range parts {
		if alike[names[i]] < 2 && names[i] == k.name {
			continue
		}
		head, code := k.name, ""
		if at := strings.LastIndex(k.name, " ("); at > 0 && strings.HasSuffix(k.name, k.id.Food.String()+")") {
			head, code = k.name[:at], k.name[at:]
		} else if alike[names[i]] > 1 && k.id.Component == "" {
			code = " (" + Clean(k.id.Food.String(), mostName) + ")"
		} else if alike[names[i]] > 1 {
			code = tailOf(k.name, n/2)
		}
		if code != "" && width(code) < n {
			names[i] = fit(head, n-width(code)) + code
		}
	}
	return names
}

// tailOf gives the end of a text, of at most n columns.
func tailOf(text string, n int) string {
	for i := range text {
		if width(text[i:]) <= n {
			return text[i:]
		}
	}
	return ""
}
