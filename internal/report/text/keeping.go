package textreport

import (
	"fmt"
	"math"
	"strings"

	"sipsum/internal/assay"
)

// tenth is the last digit of a freezing point.
const tenth = 0.1 // °C

// keeping prints how a house-made component keeps that is kept, or a syrup.
func (p *page) keeping(k *assay.Keeping) {
	if k == nil {
		return
	}
	memory := p.memory(k.FromMemory)
	p.estimate("water activity", memory, k.WaterActivity)
	if f := k.Freezing; f.Why == "" && f.Mean < -tenth {
		p.paragraph(marginWidth, 2, fmt.Sprintf("Ice begins to form at %s °C%s (%s to %s).", degrees(f.Mean), memory, degrees(f.Low), degrees(f.High)))
	}
	if k.Holding != nil {
		p.paragraph(marginWidth, 2, holding(k.Holding))
	}
}

// degrees prints a temperature with a minus sign.
func degrees(celsius float64) string {
	return minus(fmt.Sprintf("%.1f", celsius))
}

// minus gives a number its proper sign.
func minus(number string) string { return strings.Replace(number, "-", "−", 1) }

// holding says what the Food Code's table asks of a component that is kept.
func holding(h *assay.Holding) string {
	kept := fmt.Sprintf("Kept %g days", h.Keeps.Days)
	if h.Keeps.At != nil {
		kept += fmt.Sprintf(" at %g °C", h.Keeps.At.Number)
	}
	pH := fmt.Sprintf("a pH up to %.2f", h.PH)
	if math.IsNaN(h.PH) {
		pH = "a pH that nobody has read"
	}
	at := fmt.Sprintf("with %s and a water activity up to %.2f", pH, h.WaterActivity)
	const (
		control = "control of time and temperature"
		local   = " Your local code comes first."
		named   = "cut melons, tomatoes and greens, sprouts, garlic in oil"
	)
	switch {
	case h.Animal:
		return kept + ": it holds milk or egg, so it needs " + control + " (FDA Food Code, 1-201.10): keep it cold." + local
	case h.NeedsAssessment && math.IsNaN(h.PH):
		return fmt.Sprintf("%s: %s it needs %s (%s): keep it cold. An estimate lifts nothing; a meter's reading may.", kept, at, control, h.Source) + local
	case h.NeedsAssessment:
		return fmt.Sprintf("%s: %s it needs %s, unless a product assessment shows otherwise (%s): keep it cold.", kept, at, control, h.Source) + local
	}
	return fmt.Sprintf("%s: %s it needs no %s by its pH and water activity (%s), unless it is a food that the Code names (%s).", kept, at, control, h.Source, named) + local
}
