package speech

import (
	"math"
	"strconv"
	"strings"
	"unicode"
)

// Words counts the words of a text as it is read aloud: numbers are spoken out, what a hyphen joins
// is two words, and capitals that are no word are spelt.
func Words(text string) int {
	n := 0
	for _, token := range strings.FieldsFunc(text, apart) {
		n += spokenOut(strings.TrimFunc(token, func(r rune) bool { return unicode.IsPunct(r) && r != '%' }))
	}
	return n
}

// apart are the signs between words.
func apart(r rune) bool {
	return unicode.IsSpace(r) || strings.ContainsRune("-–—/·", r)
}

// spokenOut counts the words of what has no blank in it.
func spokenOut(token string) int {
	if token == "" {
		return 0
	}
	digit := strings.IndexFunc(token, unicode.IsDigit)
	if digit < 0 {
		return max(1, spelt(token))
	}
	end := digit
	for end < len(token) && (token[end] >= '0' && token[end] <= '9' || token[end] == '.' || token[end] == ',') {
		end++
	}
	if end == digit { // a digit of another script
		return len([]rune(token))
	}
	return ofNumber(token[digit:end]) + spokenOut(token[:digit]) + spokenOut(token[end:])
}

// spelt counts the letters of what is not said as a word: pH, USA.
func spelt(token string) int {
	if token == "pH" {
		return len(token)
	}
	for _, r := range token {
		if !unicode.IsUpper(r) {
			return 1
		}
	}
	return len([]rune(token))
}

// ofNumber counts the words of a number: its whole, then "point" and each digit.
func ofNumber(text string) int {
	whole, decimals, point := strings.Cut(strings.ReplaceAll(strings.Trim(text, ".,"), ",", ""), ".")
	x, err := strconv.ParseFloat(whole, 64)
	if err != nil || x >= mostSpoken {
		return len(text) // digit by digit
	}
	n := ofWhole(int(x))
	if point {
		n += 1 + len(decimals)
	}
	return n
}

// mostSpoken is from where on a number is read digit by digit.
const mostSpoken = 1e9

const (
	twenty   = 20
	hundred  = 100
	thousand = 1000
)

// ofWhole counts the words of a whole number: "two hundred and thirty-four" are five.
func ofWhole(x int) int {
	switch {
	case x <= twenty || x < hundred && x%decade == 0:
		return 1
	case x < hundred:
		return 2
	}
	scale := hundred
	for _, s := range []int{thousand, thousand * thousand} {
		if x >= s {
			scale = s
		}
	}
	n := ofWhole(x/scale) + 1
	if rest := x % scale; rest > 0 {
		if n += ofWhole(rest); rest < hundred {
			n++ // "and"
		}
	}
	return n
}

// Seconds is how long so many words take at a rate of words a minute.
func Seconds(words int, rate float64) float64 {
	const minute = 60
	return math.Ceil(float64(words) * minute / rate)
}
