package drink_test

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/drink"
)

// mebibyte repeats a piece to the size limit of a file, less room for a head.
func mebibyte(piece string) string { return strings.Repeat(piece, (1<<20-64)/len(piece)) }

// Each of these costs the YAML library a deep recursion or a time that grows
// with the square of the length if it is let through.
func TestHostileFilesEndQuicklyWithAFault(t *testing.T) {
	if testing.Short() {
		t.Skip("reads some thirty files of 1 MiB: leave -short out to run it")
	}
	const patience = 10 * time.Second // seconds on a busy machine; each takes well under one when it is idle
	cases := map[string]string{
		"brackets":          mebibyte("["),
		"braces":            mebibyte("{a: "),
		"dashes":            mebibyte("- "),
		"keys":              mebibyte("a: 1\n"),
		"different keys":    manyKeys(),
		"empty keys":        mebibyte("a:\n"),
		"nested keys":       "drink: x\nbuild:\n" + mebibyte(" a:\n"),
		"question marks":    mebibyte("? "),
		"anchors":           mebibyte("&a "),
		"aliases":           mebibyte("*a "),
		"tags":              mebibyte("!a "),
		"commas":            "[" + mebibyte(","),
		"colons":            mebibyte(": "),
		"empty block":       "drink: |\n" + mebibyte("\n"),
		"spaces block":      "drink: |\n" + mebibyte("   \n"),
		"blocks":            "build:\n" + mebibyte("  - |\n"+strings.Repeat("\n", 99)),
		"wide blocks":       "build:\n" + mebibyte("  - |\n"+strings.Repeat(strings.Repeat(" ", 400)+"\n", 90)+"    x\n"),
		"empty entries":     mebibyte("-\n"),
		"empty flow keys":   "{" + mebibyte("a,\n"),
		"documents":         mebibyte("---\n"),
		"directives":        mebibyte("%a\n"),
		"comments":          mebibyte("#\n"),
		"short comments":    mebibyte("- a #b\n"),
		"many lines":        "drink: x\nserves: 1\nbuild:\n" + mebibyte("  - 1 g a\n"),
		"many bad lines":    "drink: x\nserves: 1\nbuild:\n" + mebibyte("  - 1,5 g a\n"),
		"one long line":     "drink: " + mebibyte("x "),
		"one long number":   "drink: x\nserves: " + mebibyte("9"),
		"one long amount":   "drink: x\nserves: 1\nbuild:\n  - " + mebibyte("9") + " g a",
		"escapes":           `drink: "` + mebibyte(`\u0041`) + `"`,
		"open quote":        `drink: "` + mebibyte("x\n"),
		"carriage returns":  "drink: x" + mebibyte("\r"),
		"unreadable lines":  "drink: x\nbuild:\n" + mebibyte("  - 1 g a: b: c\n"),
		"second colons":     "drink: x\n" + mebibyte("a: b: c\n"),
		"long unknown keys": mebibyte(strings.Repeat("k", 5000) + ": 1\n"),
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
	return b.String()[:1<<20-64]
}
