package meter

import (
	"math"
	"slices"
	"sync"

	"sipsum/internal/embedded"
)

// buffer is the pH of a buffer by temperature, the coldest first.
type buffer struct {
	name   float64
	at, pH []float64
}

var buffers = sync.OnceValue(func() []buffer {
	var all []buffer
	for _, row := range embedded.Rows("buffers.csv") {
		name := row.Number("buffer")
		if len(all) == 0 || all[len(all)-1].name != name {
			all = append(all, buffer{name: name})
		}
		b := &all[len(all)-1]
		b.at, b.pH = append(b.at, row.Number("temperature")), append(b.pH, row.Number("ph"))
	}
	return all
})

// nominal is how far the name of a buffer may lie from that of the table to be the same buffer: 4.00 and 4.01.
const nominal = 0.015

// bufferNamed finds the table of a buffer by its name, the pH at 25 °C; nil if no table has it.
func bufferNamed(name float64) *buffer {
	list := buffers()
	i := slices.IndexFunc(list, func(b buffer) bool { return math.Abs(b.name-name) <= nominal })
	if i < 0 {
		return nil
	}
	return &list[i]
}

// warm gives the pH of a buffer at a temperature, between those of the table.
func (b buffer) warm(t float64) float64 {
	t = min(max(t, b.at[0]), b.at[len(b.at)-1])
	i := max(slices.IndexFunc(b.at, func(at float64) bool { return at >= t }), 1)
	share := (t - b.at[i-1]) / (b.at[i] - b.at[i-1])
	return b.pH[i-1] + share*(b.pH[i]-b.pH[i-1])
}

// inABar gives the pH of a buffer whose temperature nobody wrote down: the middle of what it has in a bar, and half
// of that range.
func (b buffer) inABar() (pH, half float64) {
	low, high := math.Inf(1), math.Inf(-1)
	for t := rule("coldest bar"); t <= rule("warmest bar"); t++ {
		low, high = min(low, b.warm(t)), max(high, b.warm(t))
	}
	return (low + high) / 2, (high - low) / 2
}
