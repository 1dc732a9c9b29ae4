package caution

import (
	"fmt"

	"sipsum/internal/estimate"
)

// amountText prints an amount with what is known of its limits.
func amountText(a estimate.Amount, unit string, certain bool) string {
	switch {
	case !a.Known && a.Bounded():
		return "up to " + number(a.Most()) + " " + unit
	case !a.Known:
		return "an unknown amount"
	case a.Complete():
		return "about " + upTo(a.Mean, a.Most()) + " " + unit
	case a.Bounded():
		return "between " + number(a.Mean) + " and " + number(a.Most()) + " " + unit
	case !certain:
		return "at least " + number(a.Mean) + " " + unit + ", what is known of it up to " + number(a.KnownMost()) + " " + unit
	}
	return "at least " + number(a.Mean) + " " + unit
}

// upTo prints a figure with the end of its interval, if it prints otherwise.
func upTo(mean, most float64) string {
	if a, b := number(mean), number(most); most > mean && a != b {
		return a + ", up to " + b
	}
	return number(mean)
}

// number prints two or three digits: more would promise too much.
func number(x float64) string {
	switch {
	case x >= 10:
		return fmt.Sprintf("%.0f", x)
	case x >= 1:
		return fmt.Sprintf("%.1f", x)
	}
	return fmt.Sprintf("%.2g", x)
}
