package htmlreport_test

import (
	"bytes"
	"errors"
	"flag"
	"maps"
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/html"
	"sipsum/internal/report/reporttest"
	"sipsum/internal/sheet"
)

var update = flag.Bool("update", false, "rewrite the golden file")

func printed(t testing.TB, l *sheet.Leaf, paper string) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, htmlreport.Leaf(&out, l, paper))
	return out.String()
}

// body is a page without its style.
func body(page string) string {
	return regexp.MustCompile(`(?s)<style>.*</style>`).ReplaceAllString(page, "")
}

func TestLeafKeepsItsForm(t *testing.T) {
	got := body(printed(t, reporttest.Leaf(), "a5"))
	const path = "testdata/leaf.html"
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), got, "run with -update and read the difference")
}

// A page is one file: no script, nothing that is fetched, and no markup of a stranger.
func TestPagesHoldNothingThatRunsOrIsFetched(t *testing.T) {
	for kind, l := range pages(t) {
		page := printed(t, l, "a5")
		for _, never := range []string{"<script", "<b>", "javascript:", "onload", "src=", "href=", "url(", "@import", "<link", "<img", "<iframe"} {
			assert.NotContains(t, page, never, kind)
		}
		assert.NotRegexp(t, `(?i)free from`, page, kind)
		assert.NotRegexp(t, `NaN|\bInf\b`, page, kind)
		assert.Contains(t, page, "default-src 'none'", kind)
	}
}

func TestUnknownPaperIsRefused(t *testing.T) {
	assert.ErrorContains(t, htmlreport.Leaf(&bytes.Buffer{}, reporttest.Leaf(), "a0"), "a0")
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestErrorsOfTheWriterAreReported(t *testing.T) {
	assert.ErrorContains(t, htmlreport.Leaf(full{}, reporttest.Leaf(), "a5"), "disk full")
}

// pages are the leaves of the hostile drink, and the made-up leaf.
func pages(t testing.TB) map[string]*sheet.Leaf {
	t.Helper()
	all := reporttest.Leaves(reporttest.Read(t, reporttest.HostileDrink()))
	all["made up"] = reporttest.Leaf()
	return all
}

// demoPages are the leaves of every demo drink.
func demoPages(t testing.TB) map[string]*sheet.Leaf {
	t.Helper()
	all := map[string]*sheet.Leaf{}
	for name, s := range reporttest.Demos(t, "eu", "us") {
		for kind, l := range reporttest.Leaves(s) {
			all[name+", "+kind] = l
		}
	}
	return all
}

// required are the tools without which a test is skipped, unless SIPSUM_PAGES says that they
// must be there: it names the script of axe-core.
func required(t testing.TB, tool string) string {
	t.Helper()
	path, err := exec.LookPath(tool)
	if err == nil {
		return path
	}
	if os.Getenv("SIPSUM_PAGES") != "" {
		t.Fatalf("SIPSUM_PAGES is set and there is no %s", tool)
	}
	t.Skipf("skipped: %s is not installed", tool)
	return ""
}

// HTML Tidy has nothing to say of any page, warnings included.
func TestPagesAreValid(t *testing.T) {
	tidy := required(t, "tidy")
	all := demoPages(t)
	maps.Copy(all, pages(t))
	for kind, l := range all {
		cmd := exec.Command(tidy, "-errors", "-quiet", "-utf8")
		cmd.Stdin = strings.NewReader(printed(t, l, "letter"))
		said, err := cmd.CombinedOutput()
		assert.NoError(t, err, kind)
		assert.Empty(t, string(said), kind)
	}
}

// What is worked from is read at a bar: its smallest print, tables and notes, is nine points on any
// paper, however many pages it takes.
func TestABenchCardIsReadableAtABar(t *testing.T) {
	l := reporttest.Leaf()
	l.Kind = "batch"
	for range 40 {
		l.Blocks = append(l.Blocks, l.Blocks...)
		if len(l.Blocks) > 200 {
			break
		}
	}
	for _, paper := range htmlreport.Papers() {
		page := printed(t, l, paper)
		size, err := strconv.ParseFloat(regexp.MustCompile(`@media print \{ html \{ font-size: ([0-9.]+)pt`).FindStringSubmatch(page)[1], 64)
		require.NoError(t, err)
		smallest := 1.0
		for _, found := range regexp.MustCompile(`\.(?:small|source)[^{]*\{[^}]*font-size: ([0-9.]+)rem`).FindAllStringSubmatch(page, -1) {
			x, err := strconv.ParseFloat(found[1], 64)
			require.NoError(t, err)
			smallest = min(smallest, x)
		}
		assert.Less(t, smallest, 1.0)
		assert.GreaterOrEqual(t, smallest*size, 9.0, paper)
	}
}
