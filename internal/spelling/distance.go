package spelling

import "unicode/utf8"

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
func Distance(a, b string, most int) int {
	if longer := utf8.RuneCountInString(a) - utf8.RuneCountInString(b); longer > most || -longer > most {
		return most + 1
	}
	s, t := []rune(a), []rune(b)
	before, last, next := make([]int, len(t)+1), make([]int, len(t)+1), make([]int, len(t)+1)
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
			return most + 1
		}
		before, last, next = last, next, before
	}
	return min(last[len(t)], most+1)
}
