package speech

import (
	"regexp"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
)

// Register is for whom a speech is.
type Register string

// The registers.
const (
	Judge Register = "judge"
	Guest Register = "guest"
)

// Registers are all of them, in the order in which they are printed.
var Registers = []Register{Judge, Guest}

// anybody is the register of what every register says.
const anybody Register = "any"

// sentence is a row of data/speech.csv.
type sentence struct {
	template string
	worth    float64
	later    float64 // of all but the first of its kind
	safety   bool    // it has no worth: it is not left out for time
}

type place struct {
	register Register
	kind     string
}

var sentences = sync.OnceValue(func() map[place]sentence {
	all := map[place]sentence{}
	for _, row := range embedded.Rows("speech.csv") {
		worth, ok := row.Optional("worth")
		later, _ := row.Optional("later")
		all[place{Register(row.Text("register")), row.Text("kind")}] = sentence{row.Text("template"), worth, later, !ok}
	}
	return all
})

// aloudAs fills the words of a kind that every register has.
func aloudAs(kind string, gaps map[string]string) string {
	return strings.TrimSpace(filled(sentences()[place{anybody, kind}].template, gaps))
}

var gap = regexp.MustCompile(`\{([^{}]+)\}`)

// filled puts words into the gaps of a template. A gap that nobody fills stays, and is not spoken.
func filled(template string, gaps map[string]string) string {
	return gap.ReplaceAllStringFunc(template, func(g string) string {
		if text, ok := gaps[g[1:len(g)-1]]; ok {
			return text
		}
		return g
	})
}

var stepWords = sync.OnceValue(func() map[string]string {
	words := map[string]string{}
	for _, row := range embedded.Rows("speech_steps.csv") {
		words[row.Text("step")] = row.Text("words")
	}
	return words
})

// Step puts a step into words, with its option if it has one ("strain", "cloth"); empty: nobody
// speaks of it.
func Step(kind, option string, gaps map[string]string) string {
	template, ok := stepWords()[kind+"."+option]
	if !ok {
		template = stepWords()[kind]
	}
	return filled(template, gaps)
}

// ForGuests are constituents of which a guest is told, by the words for them.
var ForGuests = sync.OnceValue(func() map[constituent.ID]string {
	words := map[constituent.ID]string{}
	for _, row := range embedded.Rows("speech_words.csv") {
		words[constituent.Must(constituent.ID(row.Text("constituent"))).ID] = row.Text("words")
	}
	return words
})

// shareOf is a row of data/speech_shares.csv.
type shareOf struct {
	least float64
	words string
}

var shares = sync.OnceValue(func() []shareOf {
	var list []shareOf
	for _, row := range embedded.Rows("speech_shares.csv") {
		list = append(list, shareOf{row.Number("least"), row.Text("words")})
	}
	return list
})

// AtLeast puts the least share of a whole into words: "at least a third"; empty: of so little nobody
// speaks.
func AtLeast(share float64) string {
	for _, s := range shares() {
		if share >= s.least {
			return s.words
		}
	}
	return ""
}

var last = sync.OnceValue(func() map[constituent.ID]bool {
	ids := map[constituent.ID]bool{}
	for _, row := range embedded.Rows("speech_last.csv") {
		ids[constituent.Must(constituent.ID(row.Text("constituent"))).ID] = true
	}
	return ids
})

// Last reports whether a constituent is told of after the others of its category.
func Last(id constituent.ID) bool { return last()[id] }

// Limit is a row of data/speech_limits.csv.
type Limit struct {
	Value  float64
	Source string
}

// Pace is how fast people speak, in words a minute, how long a speech may be, in seconds, from how
// much citric acid on, in mg/l, a panel finds a coffee sourer, up to which pH that may hold of a
// drink, from which strength on, in % vol, alcohol is told of, which share of the doubt of a claim is
// asked of, and which share of a figure the limit of a claim is far from it.
type Pace struct{ Slow, Fast, Time, Sour, SourPH, Strength, Question, Weak Limit }

// Limits reads data/speech_limits.csv.
var Limits = sync.OnceValue(func() Pace {
	var p Pace
	fields := map[string]*Limit{"slow": &p.Slow, "fast": &p.Fast, "time": &p.Time, "sour": &p.Sour, "sour pH": &p.SourPH, "strength": &p.Strength, "question": &p.Question, "weak": &p.Weak}
	for _, row := range embedded.Rows("speech_limits.csv") {
		field, ok := fields[row.Text("what")]
		if !ok {
			row.Fail("%q is no limit of a speech", row.Text("what"))
		}
		*field = Limit{row.Number("value"), row.Text("source")}
	}
	return p
})
