package textreport_test

import (
	"math"

	"sipsum/internal/acidity"
	"sipsum/internal/assay"
	"sipsum/internal/chemistry"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/drink"
	"sipsum/internal/estimate"
	"sipsum/internal/food"
	"sipsum/internal/sheet"
)

// estimated is a made-up figure of a solution.
func estimated(mean, sd float64, unit string) chemistry.Estimate {
	f := figure(constituent.Water, mean, sd)
	f.Unit = unit
	return chemistry.Estimate{Result: f.Result}
}

// withheld is a figure that is not given, and what bounds it.
func withheld(why string, low, high float64) chemistry.Estimate {
	return chemistry.Estimate{Why: why, Result: composition.Result{Unknown: true, Summary: estimate.Summary{Mean: math.NaN(), SD: math.NaN(), Low: low, High: high}}}
}

// espresso is a food with a published pH, published who published it.
var (
	espresso  = food.ID{Table: "core", Code: "espresso"}
	published = sheet.PHWorks{espresso: {{ID: "paper", Citation: "A. Author (2020) Of coffee. A Journal 1:1", Grade: "B"}}}
)

// dissolved is a drink with every form of what a solution can show.
func dissolved() *assay.Assay {
	none := withheld("it is more acid than coffee was titrated (down to pH 5.05): go on with the titration", math.NaN(), 5.05)
	short := withheld("milk was titrated up to pH 6.70 only", math.NaN(), math.NaN())
	read := &chemistry.Chemistry{
		Celsius: 6, PH: estimated(3.65, 0.03, "pH"), PHMeter: estimated(3.6, 0.03, "pH"), Brix: size(14.2, 0.1, "°Bx"), BrixAcid: estimated(17.8, 0.2, "1"),
		Acidity:  []chemistry.Acidity{{EndPoint: 8.1, Per100g: estimated(0.8, 0.01, "g/100 g")}, {EndPoint: 7, Per100g: estimated(0.78, 0.01, "g/100 g")}},
		Capacity: estimated(51.7, 1.6, "mmol/(l·pH)"), StrongIons: estimated(68.2, 3, "mmol/l"),
		Unseen: []string{"quinic acid"},
	}
	for i, pH := range []float64{3.6, 4, 4.5, 5, 5.5, 6, 6.5, 7, 7.5, 8.1} {
		read.Curve = append(read.Curve, chemistry.CurvePoint{PH: pH, Base: 1.25 * float64(i)})
	}
	long := []chemistry.CurvePoint{{PH: 2.1}}
	for pH := 2.5; pH < 8.1; pH += 0.5 {
		long = append(long, chemistry.CurvePoint{PH: pH, Base: 10 * pH})
	}
	for _, name := range []string{"citric acid", "tartaric acid"} {
		for i := range 3 {
			read.Doses = append(read.Doses, chemistry.Dose{Acid: name, Percent: 10, Acidity: 0.85 + 0.05*float64(i), Ml: 0.53 * float64(i+1), PH: 3.55 - 0.05*float64(i)})
		}
	}
	read.Doses[5].PH = math.NaN()
	milk := &chemistry.Chemistry{
		PHMeter: estimated(6.7, 0.03, "pH"), Brix: size(8.3, 1.3, "°Bx"), BrixAcid: short, Acidity: []chemistry.Acidity{{EndPoint: 8.1, Per100g: short}},
		Curve: []chemistry.CurvePoint{{PH: 4.15, Base: -7.89}, {PH: 5, Base: -4.32}, {PH: 6.7, Base: 0}, {PH: 7, Base: 0.69}},
	}
	gone := *read
	gone.Curve = long
	gone.CO2, gone.Degassed, gone.Doses = size(3, 0.3, "g/l"), estimated(3.61, 0.03, "pH"), nil
	shot := &chemistry.Chemistry{
		PHMeter: estimated(5.7, 0.29, "pH"), Brix: size(8.6, 0.9, "°Bx"), BrixAcid: short, Acidity: []chemistry.Acidity{{EndPoint: 8.1, Per100g: estimated(0.15, 0.04, "g/100 g")}},
		RestsOn: []acidity.Calibration{{Food: espresso, Low: 5.2, High: 6.2, Source: "paper"}, {Food: food.ID{Table: "own", Code: "drip"}, Low: 4.8, High: 5.34}},
	}
	return &assay.Assay{
		Drink: &drink.Drink{Name: "In Solution", Serves: 1}, Serving: ofWater(), Want: assay.Want{Degassed: true}, Chemistry: &gone,
		Components: []assay.Component{
			{Name: "juice", House: true, Chemistry: read},
			{Name: "milk", House: true, Chemistry: milk},
			{Name: "shot", House: true, Chemistry: shot},
			{Name: "coffee and milk", House: true, Chemistry: &chemistry.Chemistry{PHMeter: none, Capacity: none, BrixAcid: none, Brix: size(2, 0.1, "°Bx"), Acidity: []chemistry.Acidity{{EndPoint: 8.1, Per100g: none}}}},
		},
	}
}
