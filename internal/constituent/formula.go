package constituent

import (
	"fmt"
	"strconv"
	"strings"
	"sync"
	"unicode"

	"sipsum/internal/embedded"
)

var atomicWeights = sync.OnceValue(func() map[string]float64 {
	weights := map[string]float64{}
	for _, row := range embedded.Rows("atomic_weights.csv") {
		weights[row.Text("element")] = row.Number("weight")
	}
	return weights
})

// MolarMass gives the molar mass in g/mol of a formula such as "C6H8O7" or
// "MgSO4·7H2O": element symbols with counts, no brackets, parts joined by "·"
// with an optional multiplier.
func MolarMass(formula string) (float64, error) {
	total := 0.0
	for part := range strings.SplitSeq(formula, "·") {
		times, rest := leadingCount(part)
		if rest == "" {
			return 0, fmt.Errorf("formula %q has an empty part", formula)
		}
		for rest != "" {
			symbol, after := leadingElement(rest)
			weight, ok := atomicWeights()[symbol]
			if !ok {
				return 0, fmt.Errorf("formula %q: no atomic weight for %q", formula, symbol)
			}
			count, next := leadingCount(after)
			if times*count == 0 {
				return 0, fmt.Errorf("formula %q: %q is no number of atoms", formula, rest)
			}
			total += float64(times*count) * weight
			rest = next
		}
	}
	return total, nil
}

// leadingCount reads a count at the start of text; without one it is 1, and 0 if the
// digits are no count.
func leadingCount(text string) (int, string) {
	end := 0
	for end < len(text) && text[end] >= '0' && text[end] <= '9' {
		end++
	}
	if end == 0 {
		return 1, text
	}
	n, err := strconv.Atoi(text[:end])
	if err != nil {
		return 0, text[end:]
	}
	return n, text[end:]
}

func leadingElement(text string) (symbol, rest string) {
	runes := []rune(text)
	if len(runes) > 1 && unicode.IsLower(runes[1]) {
		return string(runes[:2]), string(runes[2:])
	}
	return string(runes[:1]), string(runes[1:])
}
