package rewrite

import (
	"cmp"
	"strings"

	"sipsum/internal/drink"
)

// Claim writes a sentence, and the check that decides it, behind the other claims. Without a sentence
// the check is what is said. Errors are *fail.Error.
func (t Text) Claim(say, check string) ([]byte, error) {
	for _, text := range []string{say, check} {
		if err := oneRow(text); err != nil {
			return nil, err
		}
	}
	check = strings.TrimSpace(check)
	say = cmp.Or(strings.TrimSpace(say), check)
	d := t.draft()
	rows := []string{"say: " + scalar(say), "check: " + scalar(check)}
	byHand := "claims: [{" + strings.Join(rows, ", ") + "}]"
	if n := len(d.drink.Claims); n == 0 {
		end := len(d.rows)
		for end > 0 && d.rows[end-1] == "" {
			end--
		}
		rows[0] = "  - " + rows[0]
		for i := range rows[1:] {
			rows[i+1] = "    " + rows[i+1]
		}
		d.insert(end, append([]string{"claims:"}, rows...)...)
	} else {
		if _, head, _, ok := d.at(d.drink.Claims[n-1].Place); ok {
			if _, block := entry(head); !block {
				rows = []string{"{" + strings.Join(rows, ", ") + "}"}
			}
		}
		if err := d.append(d.drink.Claims[n-1].Place, byHand, rows...); err != nil {
			return nil, err
		}
	}
	return d.done(byHand, func(after *drink.Drink) bool {
		n := len(after.Claims) - 1
		if n < 0 || after.Claims[n].Say != say || after.Claims[n].Check != check {
			return false
		}
		after.Claims = after.Claims[:n]
		if n == 0 {
			after.Claims = d.drink.Claims
		}
		return true
	})
}
