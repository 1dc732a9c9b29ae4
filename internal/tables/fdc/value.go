package fdc

import (
	"encoding/binary"
	"math"

	"sipsum/internal/estimate"
	"sipsum/internal/food"
)

// value is a row of food_nutrient.csv, as printed: numbers in the unit of the
// nutrient, None for what is blank.
type value struct {
	column, derivation, points int
	amount, low, high, limit   float64
	id                         uint64 // of the row; 0 if the file has none
	line                       int
	footnote                   string
}

// The parts of a packed value that may be absent.
const (
	hasLow = 1 << iota
	hasHigh
	hasLimit
	hasFootnote
)

// packer writes the values of one food that stand together in the file, each
// relative to the one before.
type packer struct {
	bytes []byte
	line  int
	id    uint64
}

func (p *packer) reset() { p.bytes, p.line, p.id = p.bytes[:0], 0, 0 }

func (p *packer) put(v *value) {
	var has byte
	for i, x := range [...]float64{v.low, v.high, v.limit} {
		if food.Stated(x) {
			has |= hasLow << i
		}
	}
	if v.footnote != "" {
		has |= hasFootnote
	}
	b := append(p.bytes, has)
	b = binary.AppendUvarint(b, uint64(v.column))
	b = binary.AppendUvarint(b, uint64(v.derivation))
	b = binary.AppendUvarint(b, uint64(v.points))
	b = binary.AppendUvarint(b, uint64(v.line-p.line))
	b = binary.AppendVarint(b, int64(v.id-p.id))
	b = binary.LittleEndian.AppendUint64(b, math.Float64bits(v.amount))
	for i, x := range [...]float64{v.low, v.high, v.limit} {
		if has&(hasLow<<i) != 0 {
			b = binary.LittleEndian.AppendUint64(b, math.Float64bits(x))
		}
	}
	if has&hasFootnote != 0 {
		b = binary.AppendUvarint(b, uint64(len(v.footnote)))
		b = append(b, v.footnote...)
	}
	p.bytes, p.line, p.id = b, v.line, v.id
}

// unpack reads what a packer wrote.
// The value is valid until the next one.
func unpack(b []byte, use func(*value) error) error {
	line, id := 0, uint64(0)
	uvarint := func() int {
		n, used := binary.Uvarint(b)
		b = b[used:]
		return int(n)
	}
	float := func() float64 {
		x := math.Float64frombits(binary.LittleEndian.Uint64(b))
		b = b[8:]
		return x
	}
	var v value
	for len(b) > 0 {
		has := b[0]
		b = b[1:]
		v = value{column: uvarint(), derivation: uvarint(), points: uvarint(), low: food.None, high: food.None, limit: food.None}
		line += uvarint()
		step, used := binary.Varint(b)
		b = b[used:]
		id += uint64(step)
		v.line, v.id, v.amount = line, id, float()
		if has&hasLow != 0 {
			v.low = float()
		}
		if has&hasHigh != 0 {
			v.high = float()
		}
		if has&hasLimit != 0 {
			v.limit = float()
		}
		if has&hasFootnote != 0 {
			size := uvarint()
			v.footnote = string(b[:size])
			b = b[size:]
		}
		if err := use(&v); err != nil {
			return err
		}
	}
	return nil
}

// into gives the value in the vocabulary's unit, with its state.
func (v *value) into(f *food.Value, c *column, from *derivation) {
	*f = food.Value{
		Constituent: c.id, Amount: v.amount * c.factor, SD: food.None, N: v.points, Low: v.low * c.factor, High: v.high * c.factor,
		Limit: food.None, Source: from.source, Ref: from.ref,
	}
	switch {
	case v.amount == 0 && from.assumed:
		f.State = estimate.Assumed
	case v.amount == 0 && v.limit > 0:
		f.State, f.Amount, f.Limit = estimate.Below, food.None, v.limit*c.factor
	case v.amount == 0 && v.points >= 1 && food.Stated(c.limit):
		f.State, f.Amount, f.Limit = estimate.Below, food.None, c.limit
	case v.amount > 0 && v.points >= 1 && from.analysed:
		f.State = estimate.Measured
	default:
		f.State = estimate.Calculated
	}
}
