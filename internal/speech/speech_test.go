package speech_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/embedded"
	"sipsum/internal/source"
	"sipsum/internal/speech"
)

// What is counted is what is said: beside each text stands how it is read aloud, a blank between
// words.
func TestWordsAreCountedAsTheyAreSpoken(t *testing.T) {
	for text, aloud := range map[string]string{
		"0.48 grams":                     "zero point four eight grams",
		"It holds 380 to 600 milligrams": "it holds three hundred and eighty to six hundred milligrams",
		"Its pH is 3.9 to 4.4.":          "its p h is three point nine to four point four",
		"from 13 works":                  "from thirteen works",
		"25 degrees":                     "twenty five degrees",
		"20 %":                           "twenty percent",
		"1,234 or 1005":                  "one thousand two hundred and thirty four or one thousand and five",
		"100 and 110":                    "one hundred and one hundred and ten",
		"fat-washed, breast-feeding":     "fat washed breast feeding",
		"Contains (EU): milk":            "contains e u milk",
		"3,000,021":                      "three million and twenty one",
		"…  –  ":                         "",
		"café d’été 2x":                  "café d’été two x",
	} {
		assert.Equal(t, len(strings.Fields(aloud)), speech.Words(text), text)
	}
	assert.Equal(t, 90.0, speech.Seconds(180, 120))
	assert.Equal(t, 91.0, speech.Seconds(181, 120), "half a second is one")
}

// figure makes a speech of one figure.
func figure(r speech.Range) speech.Speech {
	return speech.Make(speech.Judge, []speech.Fact{{Kind: "figure", Gaps: map[string]string{"words": "x"}, Range: &r}})
}

// Ends are rounded outwards, by no more than a quarter of the range and to no more than two digits.
func TestARangeIsToldOutwards(t *testing.T) {
	none := math.NaN()
	for want, r := range map[string]speech.Range{
		"A serving holds 390 to 600 milligrams of x.":      {Low: 391, UpTo: 598, Unit: "mg"},
		"A serving holds 50 to 120 milligrams of x.":       {Low: 59, UpTo: 117, Unit: "mg"},
		"A serving holds 9 to 12 grams of x.":              {Low: 9.9, UpTo: 11.2, Unit: "g"},
		"A serving holds 0.37 to 0.57 percent of x.":       {Low: 0.376, UpTo: 0.562, Unit: "%"},
		"A serving holds about 10 grams of x.":             {Low: 9.6, UpTo: 10.4, Unit: "g"},
		"A serving holds about 0.12 grams of x.":           {Low: 0.1151, UpTo: 0.1249, Unit: "g"},
		"A serving holds about 5 grams of x.":              {Low: 5, UpTo: 5, Unit: "g"},
		"A serving holds 0.9 to 1.1 grams of x.":           {Low: 930, UpTo: 1060, Unit: "mg"},
		"A serving holds at least 55 milligrams of x.":     {Low: 55.9, UpTo: none, Unit: "mg"},
		"A serving holds at least 0.0041 milligrams of x.": {Low: 0.00417, UpTo: none, Unit: "mg"},
		"A serving holds at most 600 milligrams of x.":     {Low: 3, UpTo: 560, Unit: "mg"},
	} {
		s := figure(r)
		require.Len(t, s.Lines, 1, want)
		assert.Equal(t, want, s.Lines[0].Text)
	}
	for _, r := range []speech.Range{
		{Low: none, UpTo: 3, Unit: "g"}, {Low: 0, UpTo: none, Unit: "g"}, {Low: 0, UpTo: 0, Unit: "g"}, {Low: 4, UpTo: 3, Unit: "g"},
		{Low: 1, UpTo: math.Inf(1), Unit: "g"}, {Low: 1, UpTo: 2, Unit: "kJ"}, {Low: -1, UpTo: 2, Unit: "g"},
	} {
		s := figure(r)
		assert.Empty(t, s.Lines, "%v", r)
		assert.Len(t, s.Unspoken, 1, "%v", r)
	}
}

// Whatever the range, what is said holds wherever the figure lies in it.
func TestNoRangeIsToldNarrower(t *testing.T) {
	for i := range 4000 {
		low := math.Pow(10, float64(i%97)/12-4)
		up := low * (1 + math.Pow(10, float64(i%31)/8-3))
		s := figure(speech.Range{Low: low, UpTo: up, Unit: "g"})
		require.Len(t, s.Lines, 1)
		told := s.Lines[0].Figure
		assert.LessOrEqual(t, told.Low, low*(1+1e-9), s.Lines[0].Text)
		assert.GreaterOrEqual(t, told.High, up*(1-1e-9), s.Lines[0].Text)
		assert.LessOrEqual(t, told.High-told.Low, max(2*(up-low), up/5), s.Lines[0].Text)
	}
}

func TestOnlyPlainWordsAreSpoken(t *testing.T) {
	for _, say := range []string{
		"The core:lemon-juice is sour", "It has the CITAC of two", "It holds 3 g†", "A figure from memory", "It is free from milk", "It is free of nuts",
		"A lactose-free veil", "Sugar‑ free-from bar", "NaN g", "It holds {much}",
	} {
		s := speech.Make(speech.Judge, []speech.Fact{{Kind: "claim.supported", Gaps: map[string]string{"say": say}}})
		assert.Empty(t, s.Lines, say)
		require.Len(t, s.Unspoken, 1, say)
		assert.NotEmpty(t, s.Unspoken[0].Why, say)
	}
	for say, want := range map[string]string{
		"the pear brings 40 %": "The pear brings 40 percent.", "A hint of USA!": "A hint of USA!", "At 10:30, twice": "At 10:30, twice.", "": "",
	} {
		s := speech.Make(speech.Judge, []speech.Fact{{Kind: "claim.supported", Gaps: map[string]string{"say": say}}})
		if want == "" || strings.Contains(say, ":") {
			assert.Empty(t, s.Lines, say) // what looks like a code is not risked
			continue
		}
		require.Len(t, s.Lines, 1, say)
		assert.Equal(t, want, s.Lines[0].Text)
	}
}

// What must be told gets general words where its own cannot be spoken.
func TestSafetyIsToldInGeneralWords(t *testing.T) {
	f := speech.Fact{Kind: "contains", Gaps: map[string]string{"allergens": "own:nuts"}, General: map[string]string{"allergens": "allergens: ask"}}
	s := speech.Make(speech.Guest, []speech.Fact{f})
	require.Len(t, s.Lines, 1)
	assert.Equal(t, "The drink contains allergens: ask.", s.Lines[0].Text)
}

// long are facts of which thirteen words each are spoken.
func long(kind string, n int) []speech.Fact {
	var list []speech.Fact
	for i := range n {
		list = append(list, speech.Fact{Kind: kind, Rank: i, Gaps: map[string]string{"say": fmt.Sprintf("this is %c sentence of thirteen words so that ten take twice sixty", 'a'+i),
			"caution": "this is a caution of thirteen words so that ten take twice sixty", "question": "Why?", "answer": "because it is so"}})
	}
	return list
}

func TestWhatIsWorthLeastIsLeftOut(t *testing.T) {
	facts := append(long("claim.supported", 14), speech.Fact{Kind: "contains", Gaps: map[string]string{"allergens": "milk"}}, speech.Fact{Kind: "open.parts", Gaps: map[string]string{"drink": "Proof", "parts": "tea"}})
	s := speech.Make(speech.Judge, facts)
	assert.LessOrEqual(t, s.Slow, 90.0)
	assert.Greater(t, s.Slow, 80.0, "what fits is spoken")
	assert.Less(t, s.Fast, s.Slow)
	require.NotEmpty(t, s.LeftOut)
	assert.Contains(t, s.LeftOut[len(s.LeftOut)-1].Text, "is n sentence", "the last of its kind goes first")
	assert.Equal(t, speech.ForTime, s.LeftOut[0].Why)
	var texts []string
	words := 0
	for _, l := range s.Lines {
		texts = append(texts, l.Text)
		words += l.Words
	}
	assert.Equal(t, s.Words, words)
	assert.Contains(t, texts, "The drink contains milk.")
	assert.Contains(t, texts, "This is Proof: tea.")
	assert.True(t, strings.HasPrefix(texts[0], "This is a sentence"), "what is kept stands in its order")
}

// Nobody answers a question about what was left out, or could not be said.
func TestAnAnswerGoesWithItsClaim(t *testing.T) {
	facts := long("claim.supported", 20)
	facts = append(facts, long("asked", 1)...)
	facts[20].After = true
	for _, l := range speech.Make(speech.Judge, facts).Lines {
		assert.NotEqual(t, "asked", l.Kind)
	}
	facts = append(long("claim.supported", 1), long("asked", 1)...)
	facts[1].After = true
	assert.Len(t, speech.Make(speech.Judge, facts).Lines, 2)
	facts[0].Gaps["say"] = "core:x"
	assert.Empty(t, speech.Make(speech.Judge, facts).Lines)
}

// What is left out is taken back where there is room, but no answer without its claim.
func TestWhatFitsIsTakenBack(t *testing.T) {
	facts := long("claim.supported", 13) // of thirteen words each
	dear := speech.Fact{Kind: "asked.works", Gaps: map[string]string{"words": "x", "works": "y"}}
	slight := speech.Fact{Kind: "made.same", Gaps: map[string]string{"name": "veil", "steps": "cooled"}}
	s := speech.Make(speech.Judge, append(slices.Clone(facts), dear, slight))
	assert.Equal(t, 13*13+4, s.Words)
	assert.Equal(t, "The veil is cooled.", s.Lines[13].Text)
	likely := speech.Fact{Kind: "claim.likely", Gaps: map[string]string{"say": strings.Repeat("much ", 20)}}
	asked := long("asked", 1)[0]
	asked.After = true
	s = speech.Make(speech.Judge, append([]speech.Fact{likely, asked}, facts...))
	assert.Equal(t, 13*13, s.Words)
	assert.Len(t, s.LeftOut, 2)
}

// A caution may be left out for time only if the speech says that there is more to ask.
func TestCautionsLeaveAWord(t *testing.T) {
	facts := long(speech.Caution, 20)
	facts[19].Sources = []source.Work{{Citation: "a regulation"}}
	for _, register := range speech.Registers {
		s := speech.Make(register, facts)
		assert.LessOrEqual(t, s.Slow, 90.0)
		last := s.Lines[len(s.Lines)-1]
		assert.Equal(t, speech.More, last.Kind)
		assert.Contains(t, last.Text, "There is more to know")
		assert.NotEmpty(t, last.Sources)
	}
	assert.Empty(t, speech.Make(speech.Guest, long(speech.Caution, 3)).LeftOut)
}

// A guest is told no figure.
func TestAGuestHearsNoFigure(t *testing.T) {
	r := speech.Range{Low: 1, UpTo: 2, Unit: "g"}
	for _, kind := range []string{"figure", "figure.more", "sweet", "ph", "acidity"} {
		assert.Empty(t, speech.Make(speech.Guest, []speech.Fact{{Kind: kind, Gaps: map[string]string{"words": "x"}, Range: &r}}).Lines, kind)
	}
}

// Every sentence, step and limit says where it comes from, none from memory; and none stands twice.
func TestEveryRowHasASource(t *testing.T) {
	for _, name := range []string{"speech.csv", "speech_steps.csv", "speech_limits.csv", "speech_words.csv", "speech_withheld.csv", "speech_numbers.csv", "speech_shares.csv", "speech_last.csv"} {
		seen := map[string]bool{}
		for _, row := range embedded.Rows(name) {
			from := row.Text("source")
			assert.NotEmpty(t, from, name)
			assert.False(t, source.IsFromMemory(from), "%s: %s", name, from)
			key := row.Text(row.Columns()[0]) + " " + row.Text(row.Columns()[1])
			if name != "speech.csv" && name != "speech_withheld.csv" {
				key = row.Text(row.Columns()[0])
			}
			assert.False(t, seen[key], "%s: %s stands twice", name, key)
			seen[key] = true
		}
	}
}
