package sheet

import (
	"fmt"
	"math"

	"sipsum/internal/acidity"
	"sipsum/internal/allergen"
	"sipsum/internal/caution"
	"sipsum/internal/chemistry"
	"sipsum/internal/drink"
)

// The sentences that stand wherever what they speak of does, whatever the form.
const (
	AcidityMeans = "Titratable acidity (ta) is what a burette finds: the base that brings the liquid, its gas gone, to pH 8.1, counted as citric acid in 100 g. These are estimates from composition: a meter knows better."
	NotEaten     = "It counts for the allergens, not for the nutrition."
	Eaten        = "It is in every figure but pH, titratable acidity and °Brix, which are of the liquid."
	MilkEstimate = "An estimate: try it small, and pour slowly. Milk is kept cold, and a warm drink served at once, as local rules say."
	SaltAdded    = "A buffering salt is a food additive: weigh it finely, taste, declare it, and keep to its legal limit for your kind of drink."
	NoPromise    = "No allergen class of these rules was found in the foods that were assessed; that is not a promise."
	NothingKnown = "Nothing is known of a serving besides its mass and its volume."
	NoGasStated  = "how much gas is in it nobody has stated"

	// InOrder stands under a list of ingredients.
	InOrder = "In descending order of what was weighed in; water and gas by what is left of them. What has to be emphasised stands in capitals. Names are those of the tables: write what the pack says."

	// LocalCode stands under the cautions, once for all of them.
	LocalCode = "Follow your local code and ask its licensed authority; what is not listed here may hurt all the same."

	// Declaring stands under every declaration of allergens.
	Declaring = allergen.Caution
)

// Acids is what stands beside a proposal of acid: data/cautions.csv.
func Acids() string { return caution.Standing("acid").Text }

// Doses says how doses are meant and what acids do.
func Doses() string {
	return "Doses are for the figures as printed, in the middle of their ranges: begin with less, stir, taste diluted, read again. " + Acids() + " What local rules say of acids in drinks comes first."
}

// GasGone explains the pH of an open glass beside that of a closed bottle; empty where the
// first is withheld.
func GasGone(c *chemistry.Chemistry) string {
	switch {
	case c.CO2.Mean == 0:
		return "It holds no carbon dioxide to lose: the pH is the same when the drink has stood open."
	case c.Degassed.Why == "":
		return "The other pH are of a closed bottle, which keeps all of its carbon dioxide; gas gone is an open glass, which holds only what air keeps in it."
	}
	return ""
}

// tenth is the last digit of a freezing point, °C.
const tenth = 0.1

// Freezes reports whether it is worth saying where ice begins to form: at a known point
// that is not water's.
func Freezes(k *chemistry.Keeping) bool { return k.Freezing.Why == "" && k.Freezing.Mean < -tenth }

// Holding says what the Food Code's table asks of a component that is kept.
func Holding(h *chemistry.Holding) string {
	kept := fmt.Sprintf("Kept %g days", h.Keeps.Days)
	if h.Keeps.Days == 1 {
		kept = "Kept 1 day"
	}
	if h.Keeps.At != nil {
		kept += fmt.Sprintf(" at %g °C", h.Keeps.At.Number)
	}
	pH := fmt.Sprintf("a pH up to %.2f", h.PH)
	if math.IsNaN(h.PH) {
		pH = "a pH that nobody has read"
	}
	if h.Doubted {
		pH = "a pH on which what was read and the recipe do not agree"
	}
	at := fmt.Sprintf("with %s and a water activity up to %.2f", pH, h.WaterActivity)
	const (
		control = "control of time and temperature"
		local   = " Your local code comes first."
		named   = "cut melons, tomatoes and greens, sprouts, garlic in oil"
	)
	c := coldChain()
	keep := " " + c.dateMark() + tooLong(c, h.Keeps) + " " + c.cooling() + local
	switch {
	case h.Animal:
		return kept + ": it holds milk or egg, so it needs " + control + " (FDA Food Code, 1-201.10): keep it cold." + keep
	case h.NeedsAssessment && h.Doubted:
		return fmt.Sprintf("%s: %s it needs %s (%s): keep it cold, and settle first which of the two is right.", kept, at, control, h.Source) + keep
	case h.NeedsAssessment && math.IsNaN(h.PH):
		return fmt.Sprintf("%s: %s it needs %s (%s): keep it cold. An estimate lifts nothing; a meter's reading may.", kept, at, control, h.Source) + keep
	case h.NeedsAssessment:
		return fmt.Sprintf("%s: %s it needs %s, unless a product assessment shows otherwise (%s): keep it cold.", kept, at, control, h.Source) + keep
	}
	return fmt.Sprintf("%s: %s it needs no %s by its pH and water activity (%s), unless it is a food that the Code names (%s).", kept, at, control, h.Source, named) + local
}

// tooLong says that it is kept longer or warmer than what needs control may be.
func tooLong(c chill, keeps drink.Keeps) string {
	text := ""
	if keeps.Days > c.Days {
		text += fmt.Sprintf(" %g days are too long.", keeps.Days)
	}
	if keeps.At != nil && keeps.At.Number > c.Cold {
		text += fmt.Sprintf(" %g °C is too warm.", keeps.At.Number)
	}
	return text
}

// PHStands reports whether the pH of a liquid is printed and rests on published ones.
func PHStands(c *chemistry.Chemistry) bool { return c.PHMeter.Why == "" && len(c.RestsOn) > 0 }

// RestsAs says as what the published pH of a food is taken; empty: as it is.
func RestsAs(r acidity.Calibration) string {
	switch {
	case r.Group != "":
		return " as a " + r.Group
	case r.Brewed:
		return " as brewed"
	case r.Parted:
		return " where it parts"
	}
	return ""
}
