package sheet_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/claim"
	"sipsum/internal/constituent"
	"sipsum/internal/food"
	"sipsum/internal/invent"
	"sipsum/internal/sheet"
)

// What to read of a food is told with what it would have to be: at least, at most, or as a share of what its
// bounds allow.
func TestWhatToReadIsToldWithWhatItWouldHaveToBe(t *testing.T) {
	none := math.NaN()
	u := invent.Unread{
		Food: &food.Food{Names: []food.Name{{Text: "Pear juice"}}}, Grams: 46, Target: "serving(MALAC) >= 200 mg",
		Gap: claim.Gap{What: "malic acid of pear juice", Settle: "my-pear: {…}"}, Of: constituent.Must("MALAC"), Least: 360.51, Most: none, Share: 0.4,
	}
	assert.Equal(t, "46 g of a serving would do for serving(MALAC) >= 200 mg if 100 g of it held 361 mg of malic acid or more; nobody knows malic acid of pear juice; read it, and write: my-pear: {…}", sheet.UnreadSaid(u))
	u.Least, u.Most = none, 881
	assert.Contains(t, sheet.UnreadSaid(u), "if 100 g of it held no more than 881 mg of malic acid; nobody")
	u.Of = nil
	assert.Contains(t, sheet.UnreadSaid(u), "if it lay 40 % or more of the way from the least to the most that its bounds allow; nobody")
}
