package typeset_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/typeset"
)

func TestWidth(t *testing.T) {
	// Unicode Standard Annex 11: ideographs and hangul are wide, combining marks
	// take no column.
	for text, want := range map[string]int{"lemon": 5, "抹茶": 4, "녹차": 4, "e\u0301": 1, "µg ≥ 3": 6, "": 0} {
		assert.Equal(t, want, typeset.Width(text), text)
	}
}

func TestWrap(t *testing.T) {
	assert.Equal(t, []string{"a bb", "ccc", "dddd"}, typeset.Wrap("a bb ccc  dddd ", 4))
	assert.Equal(t, []string{"a", "bbbb", "bbb", "c"}, typeset.Wrap("a bbbbbbb c", 4)[:4])
	assert.Empty(t, typeset.Wrap("", 4))
	for _, line := range typeset.Wrap(strings.Repeat("抹茶 matcha ", 40)+strings.Repeat("抹", 99), 31) {
		assert.LessOrEqual(t, typeset.Width(line), 31)
	}
	assert.Equal(t, strings.Repeat("抹", 5), strings.Join(typeset.Wrap(strings.Repeat("抹", 5), 1), ""), "a rune wider than the line still gets out")
}

// A figure is one glance: wherever the line ends, it stands on one of them whole.
func TestFiguresStayOnOneLine(t *testing.T) {
	for _, figure := range []string{
		"≥ 10.3 g", "57 % (55–59)", "up to 2.29", "(up to 0.079 g),", "1.046 g/ml", "5.21 to 5.97 °C.", "pH 8.1", "4.12 (3.93–4.37)", "36 g ± 2 g",
		"195 kJ / 46 kcal", "12\u2009000 draws", "8 400 kJ/2 000 kcal", "< 0.001 mg;", "(2 h)", "35 % vol", "4.8 g/100 g",
		"−6.0 °C (−6.3", "(0.56–0.83;", "day 7", "up to about 14 bar", "at most 120", "2.0 and 4.5.", "2.3\u00a0g/100 g (1.7–3.1).", "(less than 164 mg", "about 86 mg",
	} {
		text := "of it and there is between " + figure + " in the end of it"
		for n := max(len([]rune(figure)), len("between")); n < 60; n++ {
			lines := typeset.Wrap(text, n)
			assert.Equal(t, text, strings.Join(lines, " "), "nothing is lost")
			assert.Contains(t, strings.Join(lines, "\n"), figure, "%d columns", n)
		}
	}
	assert.Equal(t, []string{"in the year 2015", "grams came"}, typeset.Wrap("in the year 2015 grams came", 17), "what only looks like a figure breaks where it may")
	assert.Equal(t, []string{"8 400", "kJ/2", "000", "kcal"}, typeset.Wrap("8 400 kJ/2 000 kcal", 5), "one that is longer than the line is broken all the same")
}

// What a writer sets in by glue is room that a first line does not have.
func TestGlueTakesRoom(t *testing.T) {
	assert.Equal(t, []string{"\u00a0\u00a0\u00a0mass:", "200 g"}, typeset.Wrap("\u00a0\u00a0\u00a0mass: 200 g", 12))
	assert.Equal(t, []string{"read\u00a0200", "and so on"}, typeset.Wrap("read\u00a0200 and so on", 10))
}
