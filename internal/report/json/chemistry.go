package jsonreport

import (
	"fmt"

	"sipsum/internal/acidity"
	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/sheet"
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

type acidityForm struct {
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
	Why  string `json:"why,omitempty"` // withheld: then the figures are null
}

type perVolume struct {
	estimated
	Unit string `json:"unit"`
}

// curvePoint is a point of the titration curve at central values, without gas;
// negative base is acid.
type curvePoint struct {
	PH   number `json:"ph"`
	Base number `json:"base_mmol_per_100_g"`
}

// dose is how much of a stock brings 100 g to a titratable acidity; its ph is null
// where it is beyond what was titrated.
type dose struct {
	Acid    string `json:"acid"`
	Percent number `json:"percent"`
	Acidity number `json:"titratable_acidity"`
	Ml      number `json:"ml_per_100_g"`
	PH      number `json:"ph"`
}

// calibration is a food whose published pH, within low and high, stands in for what its
// composition does not tell; source holds ids of the table's works. Of a group, it is the
// range of what is published of such foods, and source says of which.
type calibration struct {
	Food   string `json:"food"`
	Group  string `json:"group,omitempty"`
	Brewed bool   `json:"brewed,omitempty"`
	Parted bool   `json:"parted,omitempty"`
	Low    number `json:"low"`
	High   number `json:"high"`
	Source string `json:"source"`
}

// chemistry is a liquid as a solution. from_memory lists the acids that weigh in
// it and whose constants nobody has seen in print.
type chemistryForm struct {
	PH         *ph                    `json:"ph,omitempty"`
	PHMeter    *ph                    `json:"ph_meter,omitempty"`
	Acidity    *acidityForm           `json:"titratable_acidity,omitempty"`
	AcidityTo  map[string]acidityForm `json:"titratable_acidity_to,omitempty"`
	Brix       *measured              `json:"brix,omitempty"`
	BrixFull   *estimated             `json:"brix_acid_corrected,omitempty"`
	BrixAcid   *estimated             `json:"brix_acid_ratio,omitempty"`
	Density    *interval              `json:"density,omitempty"`
	CO2        *measured              `json:"co2,omitempty"`
	PHDegassed *ph                    `json:"ph_degassed,omitempty"`
	Capacity   *perVolume             `json:"buffer_capacity,omitempty"`
	StrongIons *perVolume             `json:"strong_ion_difference,omitempty"`
	Hardness   *measured              `json:"hardness_as_caco3,omitempty"`
	Alkalinity *measured              `json:"alkalinity_as_caco3,omitempty"`
	titrated
	FromMemory []string      `json:"from_memory,omitempty"`
	RestsOn    []calibration `json:"calibrated_on,omitempty"`
	Keeping    *keeping      `json:"keeping,omitempty"`
	CurdleMap  *curdleMap    `json:"curdle_map,omitempty"`
}

// titrated is what a titration that was read tells.
type titrated struct {
	Curve   []curvePoint `json:"titration_curve,omitempty"`
	Doses   []dose       `json:"doses,omitempty"`
	Caution string       `json:"doses_caution,omitempty"`
}

func chemistryOf(c *chemistry.Chemistry, density *composition.Result) *chemistryForm {
	out := &chemistryForm{}
	if density != nil {
		d := intervalOf(*density)
		out.Density = &d
	}
	if c == nil {
		return out
	}
	if density == nil || c.TooDry != "" {
		d := intervalOf(c.Density)
		if !(c.Density.Mean > 0) {
			d.Why = c.TooDry
		}
		out.Density = &d
	}
	out.Keeping = keepingOf(c.Keeping)
	ratio, corrected := estimatedOf(c.BrixAcid), estimatedOf(c.BrixCorrected)
	out.BrixFull = &corrected
	out.PH, out.PHMeter = &ph{estimatedOf(c.PH), number(c.Celsius)}, &ph{estimatedOf(c.PHMeter), acidity.MeterCelsius}
	out.Brix, out.BrixAcid, out.CO2, out.FromMemory = measuredOf(c.Brix), &ratio, measuredOf(c.CO2), c.Unseen
	if c.CO2.Unknown {
		out.CO2.Why = sheet.NoGasStated
	}
	out.Brix.Why = c.TooDry
	out.Capacity, out.StrongIons = perVolumeOf(c.Capacity, "mmol/(l·pH)"), perVolumeOf(c.StrongIons, "mmol/l")
	if c.Degassed.Unit != "" || c.Degassed.Why != "" {
		out.PHDegassed = &ph{estimatedOf(c.Degassed), acidity.MeterCelsius}
	}
	for _, r := range c.RestsOn {
		out.RestsOn = append(out.RestsOn, calibration{r.Food.String(), r.Group, r.Brewed, r.Parted, number(r.Low), number(r.High), r.Source})
	}
	if w := c.Water; w != nil {
		out.Hardness, out.Alkalinity = measuredOf(w.Hardness), measuredOf(w.Alkalinity)
	}
	for _, p := range c.Curve {
		out.Curve = append(out.Curve, curvePoint{number(p.PH), number(p.Base)})
	}
	if len(c.Doses) > 0 {
		out.Caution = sheet.Acids()
	}
	for _, d := range c.Doses {
		out.Doses = append(out.Doses, dose{d.Acid, number(d.Percent), number(d.Acidity), number(d.Ml), number(d.PH)})
	}
	for i, a := range c.Acidity {
		each := acidityForm{estimatedOf(a.Per100g), "g/100 g", number(a.PerLitre.Mean), "citric acid", number(a.EndPoint)}
		if i == 0 {
			out.Acidity, out.AcidityTo = &each, map[string]acidityForm{}
			continue
		}
		out.AcidityTo[fmt.Sprintf("%.1f", a.EndPoint)] = each
	}
	return out
}

func estimatedOf(e chemistry.Estimate) estimated {
	return estimated{number(e.Mean), number(e.Low), number(e.High), e.Why}
}

func perVolumeOf(e chemistry.Estimate, unit string) *perVolume {
	return &perVolume{estimatedOf(e), unit}
}

func measuredOf(r composition.Result) *measured {
	return &measured{number(r.Mean), number(r.Low), number(r.High), r.Unit, ""}
}
