package store

import (
	"bufio"
	"cmp"
	"encoding/binary"
	"io"
	"math"
	"os"
	"slices"
)

// pair is a row of ranked.
type pair struct {
	stratum int64
	amount  float64
	food    int64
}

// inRank orders pairs as the table has them.
func inRank(a, b pair) int {
	return cmp.Or(cmp.Compare(a.stratum, b.stratum), cmp.Compare(b.amount, a.amount), cmp.Compare(a.food, b.food))
}

// mostPairs is how many pairs wait in memory: 24 MB.
const mostPairs = 1 << 20

// pairSize is the bytes of a pair in a file.
const pairSize = 3 * 8

// ranks gathers the pairs of a release and gives them in order. What has no room in memory waits in a
// file, in sorted runs.
type ranks struct {
	waiting []pair
	file    *os.File // nil until it is needed; it has no name any more where the system allows that
	runs    []int64  // where each run of the file ends
}

func (r *ranks) add(p pair) error {
	if len(r.waiting) == mostPairs {
		if err := r.spill(); err != nil {
			return err
		}
	}
	r.waiting = append(r.waiting, p)
	return nil
}

// spill writes what waits as a run.
func (r *ranks) spill() (err error) {
	if r.file == nil {
		if r.file, err = os.CreateTemp("", "sipsum-ranks-*"); err != nil {
			return err
		}
		_ = os.Remove(r.file.Name()) // or close does, where an open file keeps its name
	}
	slices.SortFunc(r.waiting, inRank)
	out := bufio.NewWriterSize(r.file, 1<<16)
	var row [pairSize]byte
	for _, p := range r.waiting {
		putPair(&row, p)
		if _, err := out.Write(row[:]); err != nil {
			return err
		}
	}
	if err := out.Flush(); err != nil {
		return err
	}
	end := int64(len(r.waiting)) * pairSize
	if len(r.runs) > 0 {
		end += r.runs[len(r.runs)-1]
	}
	r.runs = append(r.runs, end)
	r.waiting = r.waiting[:0]
	return nil
}

// close lets go of the file.
func (r *ranks) close() {
	if r.file != nil {
		r.file.Close()
		_ = os.Remove(r.file.Name()) // it may be gone already
	}
}

// each gives all pairs in order.
func (r *ranks) each(use func(pair) error) error {
	slices.SortFunc(r.waiting, inRank)
	if len(r.runs) == 0 {
		for _, p := range r.waiting {
			if err := use(p); err != nil {
				return err
			}
		}
		return nil
	}
	runs := merging{{next: fromMemory(r.waiting)}}
	from := int64(0)
	for _, end := range r.runs {
		runs = append(runs, &sortedRun{next: fromFile(io.NewSectionReader(r.file, from, end-from))})
		from = end
	}
	return runs.each(use)
}

func fromMemory(pairs []pair) func() (pair, error) {
	return func() (pair, error) {
		if len(pairs) == 0 {
			return pair{}, io.EOF
		}
		p := pairs[0]
		pairs = pairs[1:]
		return p, nil
	}
}

func fromFile(file io.Reader) func() (pair, error) {
	in := bufio.NewReaderSize(file, 1<<16)
	var row [pairSize]byte
	return func() (pair, error) {
		_, err := io.ReadFull(in, row[:])
		return getPair(&row), err
	}
}

func putPair(row *[pairSize]byte, p pair) {
	binary.LittleEndian.PutUint64(row[:], uint64(p.stratum))
	binary.LittleEndian.PutUint64(row[8:], math.Float64bits(p.amount))
	binary.LittleEndian.PutUint64(row[16:], uint64(p.food))
}

func getPair(row *[pairSize]byte) pair {
	return pair{
		stratum: int64(binary.LittleEndian.Uint64(row[:])),
		amount:  math.Float64frombits(binary.LittleEndian.Uint64(row[8:])),
		food:    int64(binary.LittleEndian.Uint64(row[16:])),
	}
}
