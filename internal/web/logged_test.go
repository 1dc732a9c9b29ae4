package web_test

import (
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/benchlog"
	"sipsum/internal/drink"
	"sipsum/internal/workshop"
)

// What was read goes into the log where its pot says so: a line more, the file as it was, and the page answers as of
// any reading. The next page knows of it; what cannot be read is not written down.
func TestAReadingGoesIntoTheLog(t *testing.T) {
	files := demos(t)
	files["meters.yaml"] = "meters:\n  \"<b>glass\": {kind: refractometer, checked: 2027-03-30, standards: {0 °Bx: 0.0, 10 °Bx ± 0.1 °Bx: 10.0}}\n"
	s := serve(t, files)
	const name = "harbour-veil.yaml"
	send := func(more url.Values) string {
		form := url.Values{"text": {files[name]}, "base": {workshop.Fingerprint([]byte(files[name]))}, "log": {"mint veil"}, "who|mint veil": {"=anna"}, "lot|mint veil": {"3"}, "meter|mint veil": {"<b>glass"}}
		for key, values := range more {
			form[key] = values
		}
		answer, err := http.PostForm(s.url+"/drink/"+name+"/edit", form)
		status, page := read(t, answer, err)
		require.Equal(t, http.StatusOK, status)
		return page
	}
	assert.Contains(t, send(url.Values{"read|brix||mint veil": {"soft"}}), `class="faults"`)
	_, err := os.Stat(filepath.Join(s.dir, benchlog.File))
	require.ErrorIs(t, err, os.ErrNotExist, "nothing was written down")
	page := send(url.Values{"read|brix||mint veil": {"9.5"}})
	assert.Contains(t, page, "as it is saved", "the file is as it was")
	assert.NotContains(t, page, `class="faults"`)
	assert.NotContains(t, page, "<b>glass")
	assert.Contains(t, unescaped(page), "read °Brix")
	assert.Contains(t, page, `value="9.5"`)
	text, err := os.ReadFile(filepath.Join(s.dir, benchlog.File))
	require.NoError(t, err)
	lines, faults := benchlog.Parse(benchlog.File, text)
	require.Zero(t, faults.Len())
	require.Len(t, lines, 1)
	assert.Equal(t, []string{"=anna", "Harbour Veil", "mint veil", "brix", "9.5", "3", "<b>glass"}, []string{lines[0].Who, lines[0].Drink, lines[0].Pot, lines[0].Quantity, lines[0].Value, lines[0].Lot, lines[0].Meter})
	assert.Contains(t, string(text), "'=anna", "no spreadsheet runs it")
	now, err := os.ReadFile(filepath.Join(s.dir, name))
	require.NoError(t, err)
	assert.Equal(t, files[name], string(now))
	_, again := s.fetch(t, "/drink/"+name)
	assert.Contains(t, again, `value="9.5"`)
	assert.Contains(t, again, ` checked>`, "what is in the log goes on there")
	send(url.Values{"read|ph|4.55|mint veil": {"4.4"}, "read|brix|9.5|mint veil": {"9.5"}})
	text, err = os.ReadFile(filepath.Join(s.dir, benchlog.File))
	require.NoError(t, err)
	assert.Equal(t, 3, strings.Count(string(text), "\n"), "one line more: what says what it said is no reading")
	_, list := s.fetch(t, "/")
	assert.NotContains(t, list, drink.MetersFile, "a shelf of meters is no drink")
}
