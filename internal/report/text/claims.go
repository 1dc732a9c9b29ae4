package textreport

import (
	"fmt"
	"strings"

	"sipsum/internal/label"
)

// claims prints the nutrition claims of a card that are allowed, less those that another
// says better, and in a few words what is near to be; what no figure comes near is left to
// the document.
func (p cards) claims(c *label.Card) {
	var near []string
	status := map[string]bool{}
	for _, k := range c.Claims {
		name := fmt.Sprintf("“%s”%s", Clean(k.Claim, mostName), unsure(k.Status))
		switch {
		case k.Allowed && !k.Implied:
			text := "claim " + name + ": allowed, " + Clean(k.Why, mostProse)
			if k.Disclosure != "" {
				text += fmt.Sprintf("; print with it: “%s”", Clean(k.Disclosure, mostProse))
			}
			p.paragraph(marginWidth, 2, text)
		case !k.Allowed && k.Near:
			near = append(near, name+" ("+Clean(k.Short, mostProse)+")")
		default:
			continue
		}
		status[k.Status] = true
	}
	if len(near) > 0 {
		p.paragraph(marginWidth, 2, "not allowed, but near: "+strings.Join(near, ", "))
	}
	for _, s := range statuses {
		if status[s.status] {
			p.paragraph(marginWidth, 2, s.sign+" "+s.says)
		}
	}
}

// statuses are of legal references that nobody has read in an official text: the sign of a
// claim, and what it says.
var statuses = []struct{ status, sign, says string }{
	{"secondary", "‡", "the condition of the claim was read in a secondary source: check the official text"},
	{"unverified", "‡‡", "the condition of the claim is unverified, check the official text"},
}

// unsure gives the sign of a legal reference.
func unsure(status string) string {
	for _, s := range statuses {
		if s.status == status {
			return " " + s.sign
		}
	}
	return ""
}

// claimNames names the claims that are allowed.
func (p cards) claimNames(c *label.Card) {
	var names []string
	for _, k := range c.Claims {
		if k.Allowed && !k.Implied {
			names = append(names, "“"+Clean(k.Claim, mostName)+"”")
		}
	}
	if len(names) > 0 {
		p.hanging("  – ", bulletIndent, "claims that the rules allow: "+join(names)+"; conditions: see sipsum card")
	}
}
