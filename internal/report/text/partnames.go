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

// fitParts shortens the names of parts that are longer than n columns: they end at a comma,
// where they still tell each part from the others and hold no code that does. The others stay
// as they are and get a line of their own.
func fitParts(parts []part, n int) []string {
	names, alike := make([]string, len(parts)), map[string]int{}
	for i, k := range parts {
		names[i] = k.name
		if width(k.name) > n && !strings.HasSuffix(k.name, ")") {
			names[i] = toComma(k.name, n)
		}
		alike[names[i]]++
	}
	for i, k := range parts {
		if alike[names[i]] > 1 {
			names[i] = k.name
		}
	}
	return names
}

// toComma gives the longest beginning of a name that ends before a comma and fits n columns
// with "…" behind it; all of the name if there is none.
func toComma(name string, n int) string {
	for head := name; ; {
		at := strings.LastIndex(head, ", ")
		if at <= 0 {
			return name
		}
		if head = head[:at]; width(head) < n {
			return head + "…"
		}
	}
}
