package drink_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/drink"
)

// full repeats a piece to the size limit of a file, less room for a head.
func full(piece string) string { return strings.Repeat(piece, (drink.MostBytes()-64)/len(piece)) }

// Each of these costs the YAML library a deep recursion or a time that grows
// with the square of the length if it is let through.
func TestHostileFilesEndQuicklyWithAFault(t *testing.T) {
	if testing.Short() {
		t.Skip("reads some thirty files of full size: leave -short out to run it")
	}
	const patience = 10 * time.Second // seconds on a busy machine; each takes well under one when it is idle
	cases := map[string]string{
		"brackets":          full("["),
		"braces":            full("{a: "),
		"dashes":            full("- "),
		"keys":              full("a: 1\n"),
		"different keys":    manyKeys(),
		"empty keys":        full("a:\n"),
		"nested keys":       "drink: x\nbuild:\n" + full(" a:\n"),
		"question marks":    full("? "),
		"anchors":           full("&a "),
		"aliases":           full("*a "),
		"tags":              full("!a "),
		"same tags":         "drink: x\nserves: 1\nbuild: [1 g a]\ncategories: {a: [" + full("b,") + "]}\n",
		"commas":            "[" + full(","),
		"colons":            full(": "),
		"empty block":       "drink: |\n" + full("\n"),
		"spaces block":      "drink: |\n" + full("   \n"),
		"blocks":            "build:\n" + full("  - |\n"+strings.Repeat("\n", 99)),
		"wide blocks":       "build:\n" + full("  - |\n"+strings.Repeat(strings.Repeat(" ", 400)+"\n", 90)+"    x\n"),
		"empty entries":     full("-\n"),
		"empty flow keys":   "{" + full("a,\n"),
		"documents":         full("---\n"),
		"directives":        full("%a\n"),
		"comments":          full("#\n"),
		"short comments":    full("- a #b\n"),
		"many lines":        "drink: x\nserves: 1\nbuild:\n" + full("  - 1 g a\n"),
		"many bad lines":    "drink: x\nserves: 1\nbuild:\n" + full("  - 1,5 g a\n"),
		"one long line":     "drink: " + full("x "),
		"one long number":   "drink: x\nserves: " + full("9"),
		"one long amount":   "drink: x\nserves: 1\nbuild:\n  - " + full("9") + " g a",
		"escapes":           `drink: "` + full(`\u0041`) + `"`,
		"open quote":        `drink: "` + full("x\n"),
		"carriage returns":  "drink: x" + full("\r"),
		"unreadable lines":  "drink: x\nbuild:\n" + full("  - 1 g a: b: c\n"),
		"second colons":     "drink: x\n" + full("a: b: c\n"),
		"long unknown keys": full(strings.Repeat("k", 5000) + ": 1\n"),
	}
	for name, text := range cases {
		start := time.Now()
		_, faults := drink.Parse("hostile.yaml", []byte(text), nil)
		took := time.Since(start)
		assert.Positive(t, faults.Len(), name)
		assert.Less(t, took, patience, name)
		t.Logf("%-18s %7.3f s, %d faults", name, took.Seconds(), faults.Len())
	}
}

func manyKeys() string {
	var b strings.Builder
	for i := range 100_000 {
		b.WriteString(strings.Repeat("k", i%7+1) + strings.Repeat("x", i%11) + ": 1\n")
	}
	return b.String()[:drink.MostBytes()-64]
}
