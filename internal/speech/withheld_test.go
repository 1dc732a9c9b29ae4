package speech_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/speech"
)

// What is not in a drink, what it does to a body and whom it suits no figure decides, in any of the
// languages of our words; what only sounds alike is spoken.
func TestWhatNoFigureDecidesIsWithheld(t *testing.T) {
	for _, say := range []string{
		"No milk in it", "There is no dairy here", "No sugar", "Sugar free", "Sugar-free", "Without any fat", "Zero alcohol", "No sugar added!",
		"There is no milk fat left", "None of the lactose stays", "A sugarless punch", "0 % fat", "It has 0.0 % alcohol", "It doesn't contain nuts", "It isn't dairy",
		"Not a drop of milk", "Non-alcoholic", "Unsweetened", "Decaffeinated", "The lactose is gone", "Not only bright: it is caffeine-free",
		"Ohne Zucker", "Keine Milch", "Zuckerfreier Sirup", "Sans lait", "Pas de sucre", "Sin azúcar", "Senza latte",
		"It is good for your heart", "A healthy drink", "Full of antioxidants", "It boosts your immune system", "Gut fürs Herz, gesund", "Bon pour la santé", "Muy saludable", "Fa bene alla salute",
		"Vegan", "Safe for everybody", "Suitable for coeliacs", "Allergy friendly", "Vegetarisch und für Kinder geeignet",
	} {
		assert.NotEmpty(t, speech.Withheld(say), say)
	}
	for _, say := range []string{
		"It wakes you gently", "The lemon brings most of the citric acid", "Not much caffeine", "Less sweet than it seems", "A seamless punch",
		"No other ingredient brings as much caffeine", "No more than 10 g of sugars", "At the heart of it lies coffee", "Blood orange leads", "A freely poured drink",
		"It has 0.5 g of fat", "10 g of sugars", "At least 100 mg of caffeine", "Half the sugars are fructose",
	} {
		assert.Empty(t, speech.Withheld(say), say)
	}
}
