package drink

import (
	"github.com/goccy/go-yaml/ast"

	"sipsum/internal/unit"
)

// overrunScale is the gas of a foam as a share of the liquid in it.
var overrunScale = unit.Scale{What: "an overrun", Units: []string{"%"}, Limit: "overrun", Example: "80 %"}

// Gases of a charge, as they are written.
const (
	NitrousOxide = "N2O"
	CO2          = "CO2"
	Nitrogen     = "N2"
)

// A foam is told by what was read of it, its overrun, or by what it is charged with.
var foamKind = souring(stepWith(StepEntry{
	"foam", "put gas bubbles in: {charge: 8 g, gas: N2O, bottle: 0.7 l, at: 4 °C, overrun: 80 %}; gas: N2O, CO2 or N2; whisked or steamed: {overrun: 80 %}. overrun: the cup full of liquid ÷ the cup full of foam − 1, by weight; bottle is all that it holds, up to the brim; left: what of CO2 stays in the glass",
	"- foam: {charge: 8 g, gas: N2O, bottle: 0.7 l, at: 4 °C, overrun: 80 %}",
}, grammar[Foam]{keys: []key[Foam]{
	mass("charge", "the mass of the gas of all its cartridges together", func(s *Foam) **unit.Amount { return &s.Charge }),
	word("gas", "the gas of the charge", false, []string{NitrousOxide, CO2, Nitrogen}, func(s *Foam) *string { return &s.Gas }),
	amount("bottle", "the whole volume of the closed siphon, up to the brim; without it no pressure is told", volumeOnly, func(s *Foam) **unit.Amount { return &s.Bottle }),
	scaled("at", "how cold it is", temperature, func(s *Foam) **Quantity { return &s.Temperature }),
	scaled("overrun", "the volume of the foam over that of its liquid, less one, as read", overrunScale, func(s *Foam) **Quantity { return &s.Overrun }),
	scaled("left", "what of carbon dioxide stays in the glass, stated or measured", gas, func(s *Foam) **Quantity { return &s.Left }),
}}, func(p present) (string, string) {
	switch charge, gas := p.has("charge"), p.has("gas"); {
	case charge != gas:
		return "needs charge and gas together", ""
	case !charge && p.has("bottle"):
		return "has bottle without charge", ""
	case !charge && !p.has("overrun"):
		return "needs overrun, or charge and gas", `write what was read: - foam: {overrun: … %}, or what it is charged with: - foam: {charge: … g, gas: N2O, bottle: … l, at: … °C}; if nobody knows either: - treat: "foamed"`
	}
	return "", ""
}))

// souring holds a foam of carbon dioxide to its siphon: what of the gas stays in the drink sours it.
func souring(k stepKind) stepKind {
	read := k.read
	k.read = func(r *reader, head Head, n ast.Node) (Step, bool) {
		s, ok := read(r, head, n)
		if !ok || r.torn {
			return s, ok
		}
		f := s.(*Foam)
		if f.Left != nil && f.Gas != CO2 {
			r.faults.Add(head.Place, "take left out", "left is the carbon dioxide that stays in the glass, and this foam is not charged with it")
			return nil, false
		}
		if f.Gas == CO2 && (f.Bottle == nil || f.Temperature == nil) {
			r.faults.Add(head.Place, "write - foam: {charge: "+f.Charge.String()+", gas: CO2, bottle: … l, at: … °C}", "carbon dioxide sours a foam, and without bottle and at nobody can say how much of it dissolves")
			return nil, false
		}
		return s, true
	}
	return k
}
