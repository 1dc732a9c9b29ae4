package spelling

import (
	"math/bits"
	"unicode/utf8"
)

// Allowed is how many slips a word may be away from another: one in short
// words, where two would reach almost any other word, else two.
func Allowed(word string) int {
	const short = 5
	if utf8.RuneCountInString(word) < short {
		return 1
	}
	return 2
}

// Distance counts the slips between two words: runes left out, added or
// replaced, or neighbours exchanged (optimal string alignment distance;
// Boytsov 2011, ACM J. Exp. Algorithmics 16, 1.1). It gives most + 1 as soon
// as there are more than most.
func Distance(a, b string, most int) int { return WordOf(a).Slips(b, most) }

// Word is a word to be compared with many others.
type Word struct {
	runes              []rune
	letters            uint64 // a bit for each that it has, some for several
	other              []rune
	before, last, next []int
}

// WordOf cuts a word once, however often it is compared.
func WordOf(text string) *Word {
	w := &Word{runes: []rune(text)}
	for _, r := range w.runes {
		w.letters |= bit(r)
	}
	return w
}

// bit is the place of a letter among all letters.
func bit(r rune) uint64 { return 1 << (uint64(r) & 63) }

// Slips is the Distance to another word.
func (w *Word) Slips(other string, most int) int {
	letters := w.read(other)
	if longer := len(w.runes) - len(w.other); longer > most || -longer > most {
		return most + 1
	}
	// A slip brings one letter and takes one at most: what has others in more places is too far.
	if bits.OnesCount64(w.letters^letters) > 2*most {
		return most + 1
	}
	row := w.align(most)
	if row == nil {
		return most + 1
	}
	return min(row[len(row)-1], most+1)
}

// SlipsToBeginning is the Distance to the nearest of the beginnings of another word.
func (w *Word) SlipsToBeginning(other string, most int) int {
	letters := w.read(other)
	if len(w.runes)-len(w.other) > most || bits.OnesCount64(w.letters&^letters) > most {
		return most + 1
	}
	least := most + 1
	for _, slips := range w.align(most) {
		least = min(least, slips)
	}
	return least
}

// read takes the other word apart and tells which letters it has.
func (w *Word) read(other string) (letters uint64) {
	w.other = w.other[:0]
	for _, r := range other {
		w.other = append(w.other, r)
		letters |= bit(r)
	}
	return letters
}

// align gives the slips between the word and each beginning of the other one, the empty one first; nil if
// there are more than most to all of them.
func (w *Word) align(most int) []int {
	s, t := w.runes, w.other
	if len(w.last) <= len(t) {
		size := 2 * (len(t) + 1)
		w.before, w.last, w.next = make([]int, size), make([]int, size), make([]int, size)
	}
	before, last, next := w.before[:len(t)+1], w.last[:len(t)+1], w.next[:len(t)+1]
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(s); i++ {
		next[0] = i
		least := i
		for j := 1; j <= len(t); j++ {
			cost := 1
			if s[i-1] == t[j-1] {
				cost = 0
			}
			next[j] = min(last[j]+1, next[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				next[j] = min(next[j], before[j-2]+1)
			}
			least = min(least, next[j])
		}
		if least > most {
			return nil
		}
		before, last, next = last, next, before
	}
	return last
}
