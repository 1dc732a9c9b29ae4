package estimate

// Strips gives the ziggurat's widths and heights and where its tail begins, for the
// tests to measure.
func Strips() (x, f []float64, tail float64) {
	z := normal()
	return z.x[:], z.f[:], z.tail
}

// Bits fills list with the raw numbers of a stream.
func (k Key) Bits(list []uint64) {
	stream := k.stream()
	for i := range list {
		list[i] = stream.Uint64()
	}
}

// Unit is unit.
var Unit = unit
