package jsonreport

import (
	"fmt"

	"sipsum/internal/assay"
)

// estimated is a figure that may be withheld: mean is null then, why says so,
// and low and high still bound it where they are not null.
type estimated struct {
	Mean number `json:"mean"`
	Low  number `json:"low"`
	High number `json:"high"`
	Why  string `json:"why,omitempty"`
}

type ph struct {
	estimated
	AtC number `json:"at_c"`
}

type acidity struct {
	estimated
	Unit     string `json:"unit"`
	PerL     number `json:"per_l"`
	As       string `json:"as"`
	EndPoint number `json:"end_point"`
}

type measured struct {
	Mean number `json:"mean"`
	Low  number `json:"low"`
	High number `json:"high"`
	Unit string `json:"unit"`
}

// chemistry is a liquid as a solution. from_memory lists the acids that weigh in
// it and whose constants nobody has seen in print.
type chemistry struct {
	PH         *ph                `json:"ph,omitempty"`
	PHMeter    *ph                `json:"ph_meter,omitempty"`
	Acidity    *acidity           `json:"titratable_acidity,omitempty"`
	AcidityTo  map[string]acidity `json:"titratable_acidity_to,omitempty"`
	Brix       *measured          `json:"brix,omitempty"`
	BrixAcid   *estimated         `json:"brix_acid_ratio,omitempty"`
	Density    *interval          `json:"density,omitempty"`
	CO2        *measured          `json:"co2,omitempty"`
	FromMemory []string           `json:"from_memory,omitempty"`
}

func chemistryOf(c *assay.Chemistry, density *assay.Result) *chemistry {
	out := &chemistry{}
	if density != nil {
		d := intervalOf(*density)
		out.Density = &d
	}
	if c == nil {
		return out
	}
	ratio := estimatedOf(c.BrixAcid)
	out.PH, out.PHMeter = &ph{estimatedOf(c.PH), number(c.Celsius)}, &ph{estimatedOf(c.PHMeter), assay.MeterCelsius}
	out.Brix, out.BrixAcid, out.CO2, out.FromMemory = measuredOf(c.Brix), &ratio, measuredOf(c.CO2), c.Unseen
	for i, a := range c.Acidity {
		each := acidity{estimatedOf(a.Per100g), "g/100 g", number(a.PerLitre.Mean), "citric acid", number(a.EndPoint)}
		if i == 0 {
			out.Acidity, out.AcidityTo = &each, map[string]acidity{}
			continue
		}
		out.AcidityTo[fmt.Sprintf("%.1f", a.EndPoint)] = each
	}
	return out
}

func estimatedOf(e assay.Estimate) estimated {
	return estimated{number(e.Mean), number(e.Low), number(e.High), e.Why}
}

func measuredOf(r assay.Result) *measured {
	return &measured{number(r.Mean), number(r.Low), number(r.High), r.Unit}
}
