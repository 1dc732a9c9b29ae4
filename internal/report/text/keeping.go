package textreport

import (
	"fmt"
	"strings"

	"sipsum/internal/chemistry"
	"sipsum/internal/sheet"
)

// keeping prints how a house-made component keeps that is kept, or a syrup.
func (p solutions) keeping(k *chemistry.Keeping) {
	if k == nil {
		return
	}
	if k.WaterActivity.Why == "" {
		s := p.show(k.WaterActivity.Result)
		s.unit = "" // a share of one
		p.row("water activity", remembered(k.FromMemory, &p.activity), s, "")
	}
	if f := k.Freezing; sheet.Freezes(k) {
		p.paragraph(marginWidth, 2, fmt.Sprintf("Ice begins to form at %s °C (%s to %s).", degrees(f.Mean), degrees(f.Low), degrees(f.High)))
	}
	if k.Holding != nil {
		p.paragraph(marginWidth, 2, sheet.Holding(k.Holding))
	}
}

// degrees prints a temperature with a minus sign.
func degrees(celsius float64) string {
	return minus(fmt.Sprintf("%.1f", celsius))
}

// minus gives a number its proper sign.
func minus(number string) string { return strings.Replace(number, "-", "−", 1) }
