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

func TestSlipsToBeginning(t *testing.T) {
	for _, c := range []struct {
		word, of string
		want     int // by hand, from the definition
	}{
		{"rasp", "raspberry", 0}, {"rasberr", "raspberry", 1}, {"raps", "raspberry", 1}, {"", "lemon", 0}, {"lemons", "lemon", 1}, {"xemxn", "lemonade", 2}, {"lemon", "", 5},
	} {
		for most := range 4 {
			assert.Equal(t, min(c.want, most+1), spelling.WordOf(c.word).SlipsToBeginning(c.of, most), "%q of %q within %d", c.word, c.of, most)
		}
	}
}

// One word compared with many gives what each pair gives by itself, whatever came before.
func TestAWordIsComparedAnew(t *testing.T) {
	words := []string{"lemon", "melon", "", "lime", "limes", "éclair", "eclair", "clementine", "lem", "レモン", "nomel"}
	for _, a := range words {
		one := spelling.WordOf(a)
		for _, b := range words {
			for most := range 4 {
				assert.Equal(t, spelling.WordOf(a).Slips(b, most), one.Slips(b, most), "%q %q", a, b)
				one.SlipsToBeginning(b, most)
			}
		}
	}
}
