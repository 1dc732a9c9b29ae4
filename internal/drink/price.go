package drink

import (
	"regexp"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// Price is what a pack of a food costs.
type Price struct {
	Number   float64
	Currency string      // three letters of ISO 4217
	Per      unit.Amount // the pack: a mass or a volume
}

var currency = regexp.MustCompile(`^[A-Z]{3}$`)

// readPrice reads "4.20 EUR per 1 kg".
func readPrice(r *reader, n ast.Node, what string) *Price {
	text, ok := r.text(n, what, mostName)
	if !ok {
		return nil
	}
	cost, pack, _ := strings.Cut(text, " per ")
	number, money, _ := strings.Cut(strings.TrimSpace(cost), " ")
	x, _, err := unit.ParseNumber(number)
	per, rest, wrong := unit.ParseAmount(pack)
	solid := wrong == nil && rest == "" && per.Half == 0 && per.Number > 0 && per.Measure.Kind != unit.Share
	if err != nil || x < 0 || !solid || !currency.MatchString(money) {
		r.faults.Add(r.nodeAt(n), "write a price and the pack it is of: 4.20 EUR per 1 kg, or 12.50 USD per 700 ml", "%s is no price", quoted(text))
		return nil
	}
	return &Price{x, money, per}
}

// readBest reads a date of the calendar.
func readBest(r *reader, n ast.Node, what string) string {
	text, ok := r.text(n, what, mostName)
	if _, found := unit.Day(text); ok && !found {
		r.faults.Add(r.nodeAt(n), "write year, month and day: 2027-03-31", "%s is no date", quoted(text))
	}
	return text
}
