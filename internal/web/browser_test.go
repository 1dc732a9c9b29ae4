package web_test

import (
	"bufio"
	"context"
	"encoding/json"
	"html"
	"io"
	"math"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/data"
	"sipsum/internal/cli"
)

// asProgram is set where the test's own binary is started as the program.
const asProgram = "SIPSUM_TEST_AS_PROGRAM"

func TestMain(m *testing.M) {
	if os.Getenv(asProgram) != "" {
		os.Exit(cli.Main(os.Args[1:], cli.OS()))
	}
	os.Exit(m.Run())
}

// program prepares a run of the program, with the database of the tests.
func program(t testing.TB, args ...string) *exec.Cmd {
	t.Helper()
	cmd := exec.Command(os.Args[0], args...)
	cmd.Env = append(os.Environ(), asProgram+"=1", "SIPSUM_DB="+database(), "SIPSUM_SHARED=")
	return cmd
}

// database is filled by the first program that needs it, and serves all that follow.
var database = sync.OnceValue(func() string {
	dir, err := os.MkdirTemp("", "sipsum-web-*") // of all tests: no single one may take it away
	if err != nil {
		panic(err)
	}
	return filepath.Join(dir, "sipsum.db")
})

// site is a folder of drinks and the page that serves it.
type site struct {
	dir, url string
	process  *os.Process
}

// serve starts the program on a folder with these drink files; it ends with the test. Further
// arguments follow those of the command.
func serve(t testing.TB, files map[string]string, args ...string) *site {
	t.Helper()
	s := &site{dir: t.TempDir()}
	for name, text := range files {
		require.NoError(t, os.WriteFile(filepath.Join(s.dir, name), []byte(text), 0o644))
	}
	cmd := program(t, append([]string{"serve", "--dir", s.dir}, args...)...)
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, cmd.Start())
	s.process = cmd.Process
	t.Cleanup(func() {
		_ = cmd.Process.Kill()
		_ = cmd.Wait() // it was killed
	})
	lines := bufio.NewScanner(out)
	for s.url == "" && lines.Scan() {
		s.url = regexp.MustCompile(`http://[^\s/]+`).FindString(lines.Text())
	}
	require.NotEmpty(t, s.url, "the page does not say where it is")
	go io.Copy(io.Discard, out)
	return s
}

// demos are the drinks that the program brings along, as files of a folder.
func demos(t testing.TB) map[string]string {
	t.Helper()
	files := map[string]string{}
	for _, name := range []string{"garden-tide", "harbour-veil", "slow-lantern"} {
		text, err := data.FS.ReadFile("demo/" + name + ".yaml")
		require.NoError(t, err)
		files[name+".yaml"] = string(text)
	}
	return files
}

// told gives the document that a command prints about a drink of the folder, with as many draws as
// a page uses.
func (s *site) told(t testing.TB, draws, command, drink string, args ...string) document {
	t.Helper()
	cmd := program(t, append([]string{command, filepath.Join(s.dir, drink), "--format", "json", "--draws", draws}, args...)...)
	return decoded(t, cmd)
}

// decoded runs a program and reads what it prints.
func decoded(t testing.TB, cmd *exec.Cmd) document {
	t.Helper()
	out, err := cmd.Output()
	if exit := (*exec.ExitError)(nil); err != nil {
		require.ErrorAs(t, err, &exit)
		require.Equal(t, 3, exit.ExitCode(), string(exit.Stderr)) // something is to be decided
	}
	var d document
	require.NoError(t, json.Unmarshal(out, &d))
	return d
}

// document is a document of the program, read as anybody reads it.
type document map[string]any

// at follows keys into a document; nil where one is missing.
func at(x any, keys ...string) any {
	for _, k := range keys {
		switch in := x.(type) {
		case document:
			x = in[k]
		case map[string]any:
			x = in[k]
		case []any:
			i, err := strconv.Atoi(k)
			if err != nil || i >= len(in) {
				return nil
			}
			x = in[i]
		default:
			return nil
		}
	}
	return x
}

// fetch gives a page as a client without JavaScript sees it.
func (s *site) fetch(t testing.TB, path string) (int, string) {
	t.Helper()
	answer, err := http.Get(s.url + path)
	return read(t, answer, err)
}

func read(t testing.TB, answer *http.Response, err error) (int, string) {
	t.Helper()
	require.NoError(t, err)
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	return answer.StatusCode, string(body)
}

// browser opens a browser for a test; it is gone when the test is.
func browser(t testing.TB) context.Context {
	t.Helper()
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(required(t, "chromium")), chromedp.NoSandbox)
	ctx, cancel := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	require.NoError(t, chromedp.Do(ctx), "the browser does not start")
	return ctx
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

// axeCore is the script of axe-core; without it a test is skipped.
func axeCore(t testing.TB) string {
	t.Helper()
	script := os.Getenv("SIPSUM_PAGES")
	if script == "" {
		t.Skip("skipped: SIPSUM_PAGES does not name the script of axe-core (axe.min.js)")
	}
	axe, err := os.ReadFile(script)
	require.NoError(t, err)
	return string(axe)
}

// violation is what axe-core finds.
type violation struct {
	ID, Help string
	Nodes    []struct{ HTML string }
}

// judged gives what axe-core finds on the page that the browser shows, in light and in dark.
func judged(t testing.TB, ctx context.Context, axe string) (list []violation) {
	t.Helper()
	for _, scheme := range []string{"light", "dark"} {
		require.NoError(t, chromedp.Do(ctx, inScheme(scheme), chromedp.Evaluate[chromedp.Void](axe+";0")))
		found, err := chromedp.Run(ctx, chromedp.Evaluate[string](`axe.run().then(r => JSON.stringify(r.violations))`, chromedp.EvalAwaitPromise))
		require.NoError(t, err)
		var some []violation
		require.NoError(t, json.Unmarshal([]byte(found), &some))
		list = append(list, some...)
	}
	return list
}

// inScheme sets whether somebody wants light or dark pages.
func inScheme(scheme string) chromedp.Action[chromedp.Void] {
	return func(ctx context.Context, t *chromedp.Target) (chromedp.Void, error) {
		_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}},
		})
		return chromedp.Void{}, err
	}
}

// looks are the widths at which pages are tried.
var looks = []int64{360, 768, 1440}

const tall = 900

// fits sees to it that nothing of the shown page is wider than the screen, that no text is cut off,
// and that no figure is broken over two lines.
func fits(t testing.TB, ctx context.Context, wide int64, what string) {
	t.Helper()
	over, err := chromedp.Run(ctx, chromedp.Evaluate[int64](`document.documentElement.scrollWidth`))
	require.NoError(t, err)
	assert.LessOrEqual(t, over, wide, "%s is wider than the screen", what)
	bad, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](`[...document.querySelectorAll("body *")].flatMap(e => {
		const s = getComputedStyle(e), out = [];
		if (e.closest("svg, textarea, input, select, [hidden], .unseen, script")) return out;
		const hides = x => x === "hidden" || x === "clip";
		if (e.textContent.trim() && s.display !== "inline" && (hides(s.overflowX) && e.scrollWidth > e.clientWidth + 1 || hides(s.overflowY) && e.scrollHeight > e.clientHeight + 1)) out.push("cut off: " + e.outerHTML.slice(0, 120));
		if (e.matches(".panel .grid, .handed .grid") && e.scrollWidth > e.clientWidth + 1) out.push("has to be pushed aside: " + e.outerHTML.slice(0, 120));
		if (e.matches("[data-figure]") && e.getClientRects().length > 1) out.push("a figure over two lines: " + e.outerHTML.slice(0, 160));
		return out;
	})`))
	require.NoError(t, err)
	assert.Empty(t, bad, what)
}

// pictured writes the shown page as a picture where SIPSUM_PICTURES names a folder, to be looked at.
func pictured(t testing.TB, ctx context.Context, name string) {
	t.Helper()
	folder := os.Getenv("SIPSUM_PICTURES")
	if folder == "" {
		return
	}
	shot, err := chromedp.Run(ctx, chromedp.FullScreenshot(90))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(folder, name+".png"), shot, 0o644))
}

// figure is a figure of a page: which selector of the documents it shows, in which unit where that is
// a smaller one, and its text.
type figure struct{ path, unit, text string }

// figuresOf reads the figures of a page by their data-figure.
func figuresOf(page string) (list []figure) {
	found := regexp.MustCompile(`data-figure="([^"]+)"(?: data-unit="([^"]*)")?>([^<]+)<`).FindAllStringSubmatch(page, -1)
	for _, f := range found {
		list = append(list, figure{html.UnescapeString(f[1]), f[2], strings.TrimSpace(strings.ReplaceAll(html.UnescapeString(f[3]), "\u00a0", " "))})
	}
	return list
}

var number = regexp.MustCompile(`^(?:≥ |at most |below |< )?([0-9]+(?:\.[0-9]+)?)$`)

// shows tells whether a figure of a page is that of its document, rounded to a place.
func shows(f figure, of any) bool {
	x, ok := of.(float64)
	text := number.FindStringSubmatch(f.text)
	if !ok || text == nil {
		return false
	}
	if f.unit != "" {
		x *= map[string]float64{"g": 1e-3, "mg": 1e3, "µg": 1e6}[f.unit]
	}
	if strings.HasPrefix(f.path, "claims.") || strings.Contains(f.path, "probability") {
		x *= 100
	}
	if strings.HasPrefix(f.text, "< ") {
		limit, err := strconv.ParseFloat(text[1], 64)
		return err == nil && x < limit
	}
	for places := 8; places >= -4; places-- {
		step := math.Pow10(-places)
		if strconv.FormatFloat(math.Round(x/step)*step, 'f', max(places, 0), 64) == text[1] {
			return true
		}
	}
	return false
}
