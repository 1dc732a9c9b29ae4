package spelling

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// seen writes a name as it is seen, in small letters: without what has no shape.
func seen(name string) string {
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Cf, r) || unicode.IsControl(r) && !unicode.IsSpace(r) {
			return -1
		}
		return unicode.ToLower(r)
	}, name)
}

// Words are the words of a name in small letters.
func Words(name string) []string {
	return strings.FieldsFunc(seen(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsNumber(r) && !unicode.IsMark(r) })
}

// Plain writes a name as its words, each parted by one space.
func Plain(name string) string { return strings.Join(Words(name), " ") }

// Alike tells whether case and spaces are all that tells two names apart.
func Alike(a, b string) bool { return bare(a) == bare(b) }

// bare writes a name as it is seen, without spaces.
func bare(name string) string { return strings.Join(strings.Fields(seen(name)), "") }

// way is how a name is near, the nearest first.
type way int

const (
	alike way = iota
	hasAll
	within
	begins
	slips
)

// Nearness is how near a name is to what was written: by which way, and how far along it.
type Nearness struct {
	way way
	far int
}

// Compare is negative if a name is nearer than another.
func (n Nearness) Compare(other Nearness) int {
	return cmp.Or(cmp.Compare(n.way, other.way), cmp.Compare(n.far, other.far))
}

// InWords tells that whole words are the same, and not only letters.
func (n Nearness) InWords() bool { return n.way <= within }

// InLetters tells that it is the same name, but for case, spaces or a slip of the pen.
func (n Nearness) InLetters() bool { return n.way == alike || n.way == slips }

// Name is a name and its words, cut once however often it is compared.
type Name struct {
	bare  string // as it is seen, without spaces
	words []string
	plain string
	runes int
}

// NameOf cuts a name.
func NameOf(text string) Name {
	words := Words(text)
	plain := strings.Join(words, " ")
	return Name{bare: bare(text), words: words, plain: plain, runes: utf8.RuneCountInString(plain)}
}

// Near tells how near a name is to what was written; ok is false for another name altogether.
func Near(written, name Name) (n Nearness, ok bool) {
	switch {
	case len(written.words) == 0 || len(name.words) == 0:
		return Nearness{}, false
	case written.plain == name.plain, written.bare == name.bare:
		return Nearness{alike, 0}, true
	case holds(name.words, written.words, sameWord):
		return Nearness{hasAll, len(name.words) - len(written.words)}, true
	case holds(written.words, name.words, sameWord):
		return Nearness{within, len(written.words) - len(name.words)}, true
	case holds(name.words, written.words, strings.HasPrefix):
		return Nearness{begins, len(name.words) - len(written.words)}, true
	}
	const lettersToASlip = 4
	most := min(Allowed(written.plain), written.runes/lettersToASlip)
	if name.runes-written.runes > most || written.runes-name.runes > most {
		return Nearness{}, false
	}
	far := Distance(written.plain, name.plain, most)
	return Nearness{slips, far}, far <= most
}

// holds tells whether there is a word for each of some others.
func holds(words, all []string, is func(have, want string) bool) bool {
	for _, want := range all {
		if !slices.ContainsFunc(words, func(have string) bool { return is(have, want) }) {
			return false
		}
	}
	return true
}

// sameWord compares two words, the s of a plural aside.
func sameWord(a, b string) bool { return singular(a) == singular(b) }

// singular leaves the s of a plural out; what is shorter than a plural of a word stays.
func singular(word string) string {
	const shortest = 4
	if len(word) >= shortest {
		return strings.TrimSuffix(word, "s")
	}
	return word
}

// Names are names to be compared with what somebody writes.
type Names []Name

// NamesOf cuts names.
func NamesOf(texts []string) Names {
	names := make(Names, len(texts))
	for i, text := range texts {
		names[i] = NameOf(text)
	}
	return names
}

// Nearest gives the positions of the names that are near to what was written, the nearest first, and
// of equally near ones the first.
func (names Names) Nearest(written string) []int {
	type candidate struct {
		at int
		Nearness
	}
	as := NameOf(written)
	var found []candidate
	for i, name := range names {
		if n, ok := Near(as, name); ok {
			found = append(found, candidate{i, n})
		}
	}
	slices.SortStableFunc(found, func(a, b candidate) int { return a.Compare(b.Nearness) })
	at := make([]int, len(found))
	for i, c := range found {
		at[i] = c.at
	}
	return at
}

// Nearest gives the names themselves.
func Nearest(written string, names []string) []string {
	var near []string
	for _, i := range NamesOf(names).Nearest(written) {
		near = append(near, names[i])
	}
	return near
}
