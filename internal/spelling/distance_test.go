package spelling_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/spelling"
)

func TestDistance(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int // by hand, from the definition
	}{
		{"", "", 0}, {"lemon", "lemon", 0}, {"lemno", "lemon", 1}, {"lemon", "melon", 2}, {"lime", "limes", 1}, {"", "abc", 3},
		{"café", "cafe", 1}, {"kitten", "sitting", 3},
		{"ca", "abc", 3}, // with unrestricted exchanges it would be 2; see distance.go's source
	} {
		for most := range 6 {
			want := min(c.want, most+1)
			assert.Equal(t, want, spelling.Distance(c.a, c.b, most), "%q %q within %d", c.a, c.b, most)
			assert.Equal(t, want, spelling.Distance(c.b, c.a, most), "%q %q within %d", c.b, c.a, most)
		}
	}
}
