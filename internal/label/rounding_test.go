package label_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/constituent"
)

// Bands of the Commission's guidance of December 2012, section 6, at their edges.
func TestRoundingEU(t *testing.T) {
	for _, c := range []struct {
		key    string
		tag    constituent.ID
		amount float64
		want   string
	}{
		{"fat", "FAT", 0, "0 g"}, {"fat", "FAT", 0.01, "<0.5 g"}, {"fat", "FAT", 0.5, "<0.5 g"}, {"fat", "FAT", 0.51, "0.5 g"},
		{"fat", "FAT", 9.94, "9.9 g"}, {"fat", "FAT", 9.96, "10 g"}, {"fat", "FAT", 10.4, "10 g"}, {"fat", "FAT", 10.5, "11 g"},
		{"saturates", "FASAT", 0.1, "<0.1 g"}, {"saturates", "FASAT", 0.11, "0.1 g"}, {"saturates", "FASAT", 10, "10 g"},
		{"salt", "NA", 5, "<0.01 g"},       // salt 0.0125 g
		{"salt", "NA", 5.2, "0.01 g"},      // salt 0.013 g
		{"salt", "NA", 40, "0.10 g"},       // salt 0.1 g
		{"salt", "NA", 102.4, "0.26 g"},    // salt 0.256 g
		{"salt", "NA", 398.4, "1.0 g"},     // salt 0.996 g rounds into the next band
		{"salt", "NA", 416, "1.0 g"},       // salt 1.04 g
		{"sugars", "SUGAR", 3.25, "3.3 g"}, // halves go up
		{"protein", "PROCNT", 0.5, "<0.5 g"},
	} {
		assert.Equal(t, c.want, row(t, card(t, "eu", facts(100, map[constituent.ID]float64{c.tag: c.amount})), c.key).Per100ml.Printed, "%s %g", c.key, c.amount)
	}
}

// Bands of appendix H of the FDA's guide, at their edges.
func TestRoundingUS(t *testing.T) {
	for _, c := range []struct {
		key    string
		tag    constituent.ID
		amount float64
		want   string
	}{
		{"calories", "PROCNT", 4.9 / 4, "0"}, {"calories", "PROCNT", 5.0 / 4, "5"}, {"calories", "PROCNT", 47.5 / 4, "50"},
		{"calories", "PROCNT", 50.0 / 4, "50"}, {"calories", "PROCNT", 50.4 / 4, "50"}, {"calories", "PROCNT", 55.0 / 4, "60"},
		{"fat", "FAT", 0.49, "0 g"}, {"fat", "FAT", 0.5, "0.5 g"}, {"fat", "FAT", 1.3, "1.5 g"}, {"fat", "FAT", 4.74, "4.5 g"},
		{"fat", "FAT", 4.8, "5 g"}, {"fat", "FAT", 5.4, "5 g"}, {"trans-fat", "FATRN", 1.1, "1 g"},
		{"cholesterol", "CHOLE", 1.9, "0 mg"}, {"cholesterol", "CHOLE", 2, "less than 5 mg"}, {"cholesterol", "CHOLE", 5, "less than 5 mg"}, {"cholesterol", "CHOLE", 8, "10 mg"},
		{"sodium", "NA", 4.9, "0 mg"}, {"sodium", "NA", 7, "5 mg"}, {"sodium", "NA", 8, "10 mg"}, {"sodium", "NA", 138, "140 mg"}, {"sodium", "NA", 144, "140 mg"}, {"sodium", "NA", 146, "150 mg"},
		{"carbohydrate", "CHOCDF", 0.49, "0 g"}, {"carbohydrate", "CHOCDF", 0.5, "less than 1 g"}, {"carbohydrate", "CHOCDF", 0.99, "less than 1 g"}, {"carbohydrate", "CHOCDF", 1.5, "2 g"},
		{"sugars", "SUGAR", 17, "17 g"}, {"added-sugars", "SUGAD", 17, "17 g"}, // honey: all its sugars are added ones
		{"vitamin-d", "VITD", 2, "2 mcg"}, {"vitamin-d", "VITD", 2.26, "2.3 mcg"}, {"iron", "FE", 0.36, "0.4 mg"}, {"calcium", "CA", 264, "260 mg"},
	} {
		assert.Equal(t, c.want, row(t, card(t, "us", facts(100, map[constituent.ID]float64{c.tag: c.amount})), c.key).Serving.Printed, "%s %g", c.key, c.amount)
	}
}

// The FDA's sample label (OMB 0910-0497, appendix III), and 21 CFR
// 101.9(c)(8)(iii) at the edges of its bands.
func TestDailyValues(t *testing.T) {
	for _, c := range []struct {
		key    string
		tag    constituent.ID
		amount float64
		want   string
		why    string
	}{
		{"fat", "FAT", 8, "10 %", "sample label"},
		{"saturated-fat", "FASAT", 1, "5 %", "sample label"},
		{"cholesterol", "CHOLE", 0, "0 %", "sample label"},
		{"sodium", "NA", 160, "7 %", "sample label"},
		{"carbohydrate", "CHOCDF", 37, "13 %", "sample label"},
		{"fiber", "FIBTG", 4, "14 %", "sample label"},
		{"added-sugars", "SUGAD", 10, "20 %", "sample label"},
		{"vitamin-d", "VITD", 2, "10 %", "sample label: nearest 2 up to 10"},
		{"calcium", "CA", 260, "20 %", "sample label"},
		{"iron", "FE", 8, "45 %", "sample label: nearest 5"},
		{"potassium", "K", 235, "6 %", "sample label: half-way goes up"},
		{"potassium", "K", 0.019 * 4700, "0 %", "below 2 %"},
		{"potassium", "K", 0.02 * 4700, "2 %", "2 %"},
		{"iron", "FE", 0.103 * 18, "10 %", "above 10 %: nearest 5"},
		{"iron", "FE", 0.5 * 18, "50 %", "up to and including 50: nearest 5"},
		{"iron", "FE", 0.54 * 18, "50 %", "above 50: nearest 10"},
		{"iron", "FE", 0.56 * 18, "60 %", "above 50: nearest 10"},
		{"fat", "FAT", 0.4, "0 %", "nothing beside a printed 0"},
	} {
		assert.Equal(t, c.want, row(t, card(t, "us", facts(100, map[constituent.ID]float64{c.tag: c.amount})), c.key).Serving.DailyValue, "%s %g: %s", c.key, c.amount, c.why)
	}
	r := row(t, card(t, "us", facts(100, map[constituent.ID]float64{"SUGAD": 10})), "added-sugars")
	assert.Equal(t, "Includes 10 g Added Sugars", r.Line)
	assert.Empty(t, row(t, card(t, "us", facts(100, nil)), "sugars").Serving.DailyValue, "total sugars have no daily value")
}

// Annex XIII, part B: 8 400 kJ, 70 g fat, 90 g sugars, 6 g salt.
func TestReferenceIntakes(t *testing.T) {
	c := card(t, "eu", facts(200, map[constituent.ID]float64{"FAT": 7, "SUGAR": 9, "CHOAVL": 26, "NA": 240, "PROCNT": 5, "FASAT": 2}))
	for key, want := range map[string]string{"fat": "10 %", "saturates": "10 %", "carbohydrate": "10 %", "sugars": "10 %", "protein": "10 %", "salt": "10 %"} {
		assert.Equal(t, want, row(t, c, key).Serving.Reference, key)
		assert.Empty(t, row(t, c, key).Per100ml.Reference, "percentages are of a serving")
	}
	// 7·37 + 26·17 + 5·17 = 786 kJ of 8 400 kJ
	assert.Equal(t, "9 %", row(t, c, "energy").Serving.Reference)
	assert.Equal(t, "Reference intake of an average adult (8 400 kJ/2 000 kcal)", c.Statements[0].Text)
	assert.InDelta(t, 3.5, *row(t, c, "fat").Per100ml.Value, 1e-12, "per 100 ml of a 200 ml serving")
}
