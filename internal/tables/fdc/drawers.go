package fdc

import (
	"encoding/binary"
	"fmt"
	"iter"
	"os"

	"sipsum/internal/fail"
)

// What the drawers hold in memory and how many foods share one. With two
// million foods there are some five hundred drawers, so that a drawer gives
// about 100 KiB to the file whenever they are emptied.
const (
	perDrawer = 4096
	block     = 16 << 10  // bytes by which a drawer grows
	maxHeld   = 48 << 20  // bytes of the blocks of all drawers before they are emptied to the file
	maxDrawer = 256 << 20 // bytes of one drawer: hundreds of times what its foods can need
)

// drawers brings slips about foods into the order of the foods, whatever the
// order in which they come. Each drawer belongs to a range of foods; when the
// drawers together hold too much they are emptied into one temporary file. A
// small release never touches the disk.
type drawers struct {
	all   []drawer
	empty [][]byte // blocks to be used again
	held  int      // bytes of blocks in use
	most  int      // maxHeld; smaller in tests
	file  *os.File
	end   int64
}

type drawer struct {
	blocks [][]byte // what came since the drawers were emptied, in order
	pieces []piece  // what went to the file, in order
	size   int
}

type piece struct {
	at   int64
	size int
}

func newDrawers(foods, most int) *drawers {
	return &drawers{all: make([]drawer, (foods+perDrawer-1)/perDrawer), most: most}
}

// slip is what one row, or one run of rows, says of a food.
type slip struct {
	kind byte
	body []byte
}

// put files a slip under the food with a place in the order.
func (d *drawers) put(place uint32, kind byte, body []byte) error {
	in := &d.all[place/perDrawer]
	need := 2 + 1 + binary.MaxVarintLen32 + len(body)
	last := len(in.blocks) - 1
	if last < 0 || cap(in.blocks[last])-len(in.blocks[last]) < need {
		in.blocks = append(in.blocks, d.block(need))
		last++
	}
	b := in.blocks[last]
	before := len(b)
	b = binary.LittleEndian.AppendUint16(b, uint16(place%perDrawer))
	b = append(b, kind)
	b = binary.AppendUvarint(b, uint64(len(body)))
	b = append(b, body...)
	in.blocks[last] = b
	if in.size += len(b) - before; in.size > maxDrawer {
		return fmt.Errorf("a few thousand foods have more than %d MiB of rows", maxDrawer>>20)
	}
	if d.held > d.most {
		return d.store()
	}
	return nil
}

// block gives an empty block of at least the size that is needed.
func (d *drawers) block(need int) []byte {
	if last := len(d.empty) - 1; last >= 0 && need <= block {
		b := d.empty[last]
		d.empty = d.empty[:last]
		d.held += block
		return b
	}
	need = max(need, block)
	d.held += need
	return make([]byte, 0, need)
}

// store writes what the drawers hold to the file.
func (d *drawers) store() error {
	if d.file == nil {
		file, err := os.CreateTemp("", "sipsum-fdc-*")
		if err != nil {
			return noRoom(err)
		}
		d.file = file
		os.Remove(file.Name()) // where the system allows it, nothing is left behind even by a kill
	}
	var together []byte
	for i := range d.all {
		in := &d.all[i]
		if len(in.blocks) == 0 {
			continue
		}
		together = together[:0]
		for _, b := range in.blocks {
			together = append(together, b...)
			if cap(b) == block {
				d.empty = append(d.empty, b[:0])
			}
		}
		in.blocks = in.blocks[:0]
		if _, err := d.file.WriteAt(together, d.end); err != nil {
			return noRoom(err)
		}
		in.pieces = append(in.pieces, piece{at: d.end, size: len(together)})
		d.end += int64(len(together))
	}
	d.held = 0
	return nil
}

// take gives the slips of a drawer, by food, in the order in which they were
// put. They are valid until into is used again.
func (d *drawers) take(i int, into *contents) error {
	in := &d.all[i]
	if cap(into.bytes) < in.size {
		into.bytes = make([]byte, 0, in.size+in.size/4)
	}
	into.bytes = into.bytes[:0]
	for _, p := range in.pieces {
		start := len(into.bytes)
		into.bytes = into.bytes[:start+p.size]
		if _, err := d.file.ReadAt(into.bytes[start:], p.at); err != nil {
			return noRoom(err)
		}
	}
	for _, b := range in.blocks {
		into.bytes = append(into.bytes, b...)
	}
	in.blocks = nil
	into.index()
	return nil
}

func (d *drawers) close() {
	if d.file != nil {
		d.file.Close()
		os.Remove(d.file.Name()) // where it could not be removed while open
	}
}

func noRoom(err error) error {
	return fail.Because(fail.Failed, err, "cannot keep rows in a temporary file", "make room in the folder for temporary files, or name another in $TMPDIR")
}

// contents is an opened drawer.
type contents struct {
	bytes       []byte
	first, last [perDrawer]int32 // of each food, one more than the number of its slip; 0 for none
	slips       []slip
	next        []int32
}

// index finds the slips of each food.
func (c *contents) index() {
	c.first, c.last = [perDrawer]int32{}, [perDrawer]int32{}
	c.slips, c.next = c.slips[:0], c.next[:0]
	for rest := c.bytes; len(rest) > 0; {
		food, kind := binary.LittleEndian.Uint16(rest), rest[2]
		size, used := binary.Uvarint(rest[3:])
		body := rest[3+used:][:size]
		rest = rest[3+used+int(size):]
		c.slips, c.next = append(c.slips, slip{kind: kind, body: body}), append(c.next, 0)
		number := int32(len(c.slips))
		if before := c.last[food]; before > 0 {
			c.next[before-1] = number
		} else {
			c.first[food] = number
		}
		c.last[food] = number
	}
}

// of gives the slips of a food.
func (c *contents) of(place uint32) iter.Seq[slip] {
	return func(yield func(slip) bool) {
		for number := c.first[place%perDrawer]; number > 0; number = c.next[number-1] {
			if !yield(c.slips[number-1]) {
				return
			}
		}
	}
}
