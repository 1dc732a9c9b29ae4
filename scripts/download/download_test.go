package main

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const content = "a table\n"

func sumOf(text string) string {
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:])
}

// publisher is a server on this machine that behaves in every way known.
func publisher(t *testing.T) *httptest.Server {
	t.Helper()
	mux := http.NewServeMux()
	mux.HandleFunc("/good", func(w http.ResponseWriter, _ *http.Request) { w.Write([]byte(content)) })
	mux.HandleFunc("/unannounced", func(w http.ResponseWriter, _ *http.Request) {
		w.Write([]byte(content))
		w.(http.Flusher).Flush()
	})
	mux.HandleFunc("/page", func(w http.ResponseWriter, _ *http.Request) { w.Write([]byte("<!doctype html><html>terms</html>")) })
	mux.HandleFunc("/empty", func(http.ResponseWriter, *http.Request) {})
	mux.HandleFunc("/cut", func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Length", "1000")
		w.Write([]byte(content))
	})
	mux.HandleFunc("/huge", func(w http.ResponseWriter, _ *http.Request) { w.Header().Set("Content-Length", "99999999999") })
	mux.Handle("/plain", http.RedirectHandler("http://nowhere.invalid/table", http.StatusFound))
	mux.HandleFunc("/slow", func(w http.ResponseWriter, r *http.Request) {
		w.Header().Set("Content-Length", "1000")
		w.Write([]byte(content))
		w.(http.Flusher).Flush()
		<-r.Context().Done()
	})
	server := httptest.NewTLSServer(mux)
	t.Cleanup(server.Close)
	return server
}

// get fetches one path into a new folder.
func get(t *testing.T, ctx context.Context, what file) (folder, said string, err error) {
	t.Helper()
	server := publisher(t)
	web := server.Client()
	web.CheckRedirect = client().CheckRedirect
	what.url = server.URL + what.url
	folder = t.TempDir()
	out := &bytes.Buffer{}
	err = getAll(ctx, &fetcher{client: web, out: out, progress: &progress{}}, []file{what}, folder, "")
	return folder, out.String(), err
}

func TestGetWritesTheWholeFileWithItsSum(t *testing.T) {
	for _, path := range []string{"/good", "/unannounced"} {
		folder, said, err := get(t, t.Context(), file{name: "t.csv", url: path, sha256: strings.ToUpper(sumOf(content))})
		require.NoError(t, err, path)
		kept, err := os.ReadFile(filepath.Join(folder, "t.csv"))
		require.NoError(t, err)
		assert.Equal(t, content, string(kept))
		assert.Contains(t, said, "8 bytes, SHA-256 "+sumOf(content))
	}
}

func TestGetLeavesNothingBehindWhenItFails(t *testing.T) {
	for path, says := range map[string]string{
		"/missing": "the publisher answers 404",
		"/page":    "sends a page in place of the file",
		"/empty":   "is empty",
		"/cut":     "unexpected EOF",
		"/huge":    "more than any table has",
		"/plain":   "which is not https",
		"/good":    "where " + sumOf("another") + " was expected",
	} {
		folder, _, err := get(t, t.Context(), file{name: "t.csv", url: path, page: "https://page.invalid", sha256: sumOf("another")})
		require.ErrorContains(t, err, says, path)
		assert.ErrorContains(t, err, "https://page.invalid", path)
		left, err := os.ReadDir(folder)
		require.NoError(t, err)
		assert.Empty(t, left, path)
	}
}

func TestGetCanBeInterrupted(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	time.AfterFunc(50*time.Millisecond, cancel)
	folder, _, err := get(t, ctx, file{name: "t.csv", url: "/slow"})
	require.ErrorIs(t, err, context.Canceled)
	left, err := os.ReadDir(folder)
	require.NoError(t, err)
	assert.Empty(t, left)
}

func TestGetKeepsWhatIsThere(t *testing.T) {
	folder := t.TempDir()
	at := filepath.Join(folder, "t.csv")
	require.NoError(t, os.WriteFile(at, []byte("mine"), 0o600))
	out := &bytes.Buffer{}
	f := &fetcher{client: http.DefaultClient, out: out, progress: &progress{}}
	require.NoError(t, f.get(t.Context(), file{name: "t.csv", url: "https://nowhere.invalid"}, folder))
	kept, err := os.ReadFile(at)
	require.NoError(t, err)
	assert.Equal(t, "mine", string(kept))
	assert.Contains(t, out.String(), "is there already")
}

func TestWithoutAnAddressThePageIsNamed(t *testing.T) {
	out := &bytes.Buffer{}
	require.NoError(t, run(t.Context(), out, "swiss", t.TempDir(), ""))
	assert.Contains(t, out.String(), "no address is known; take the files from https://naehrwertdaten.ch/en/downloads/")
	assert.ErrorContains(t, run(t.Context(), out, "nothing", t.TempDir(), ""), `no release of format "nothing"`)
	assert.ErrorContains(t, run(t.Context(), out, "sr", "", ""), "-to DIR")
}

func TestListNamesLicenceAndSource(t *testing.T) {
	out := &bytes.Buffer{}
	require.NoError(t, run(t.Context(), out, "", "", ""))
	files, err := readFiles()
	require.NoError(t, err)
	for _, f := range files {
		assert.Contains(t, out.String(), f.format+" "+f.release+": "+f.publisher)
		assert.Contains(t, out.String(), "licence: "+f.licence)
	}
}

func TestReleasesAreSourced(t *testing.T) {
	files, err := readFiles()
	require.NoError(t, err)
	seen := map[string]bool{}
	for _, f := range files {
		for what, text := range map[string]string{"format": f.format, "release": f.release, "publisher": f.publisher, "licence": f.licence, "source": f.source} {
			assert.NotEmpty(t, text, "%s of %s", what, f.name)
		}
		for _, address := range []string{f.page, f.url} {
			if address == "" {
				continue
			}
			parsed, err := url.Parse(address)
			require.NoError(t, err)
			assert.Equal(t, "https", parsed.Scheme, address)
		}
		if f.url != "" {
			assert.NotEmpty(t, f.name, f.url)
			assert.Equal(t, filepath.Base(f.name), f.name, "the name of a file has no folder")
			assert.False(t, seen[f.name], "%s stands twice", f.name)
			seen[f.name] = true
		}
	}
}

func TestProgressTellsRateAndTimeLeft(t *testing.T) {
	p := &progress{}
	p.begin("t.csv", 4e6)
	p.Write(make([]byte, 1e6))
	assert.Equal(t, "1.0 of 4.0 MB, 0.5 MB/s, 6s left", p.text(2*time.Second))
	p.begin("t.csv", -1)
	p.Write(make([]byte, 3e6))
	assert.Equal(t, "3.0 MB, 1.5 MB/s", p.text(2*time.Second))
}
