package web_test

import (
	"fmt"
	"math/rand/v2"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// SIPSUM_LOAD is for how long people work at drinks in TestLoad: 60s.
const loadFor = "SIPSUM_LOAD"

const (
	people = 50
	pause  = 5 * time.Second // between two changes of one
	most   = 1 << 30         // bytes that the program may hold: two of the largest drinks, data/size_limits.csv
)

// Fifty people, each at a drink of twelve pots of their own, with a change every five seconds and now and then a save: nobody
// is sent away and nothing is lost, and the program holds no more than two of the largest drinks would.
func TestLoad(t *testing.T) {
	long, err := time.ParseDuration(os.Getenv(loadFor))
	if err != nil {
		t.Skip("skipped: " + loadFor + " does not say for how long: " + loadFor + "=60s")
	}
	twelve, err := os.ReadFile("../cli/testdata/twelve.yaml")
	require.NoError(t, err)
	files := map[string]string{}
	for i := range people {
		files[fmt.Sprintf("p%d.yaml", i)] = string(twelve)
	}
	s := serve(t, files)
	warm, _ := s.fetch(t, "/drink/p0.yaml")
	require.Equal(t, 200, warm)
	before := held(t, s.process.Pid, "VmRSS")

	var mu sync.Mutex
	var took []time.Duration
	var wrong []string
	saves := 0
	note := func(d time.Duration, problem string) {
		mu.Lock()
		defer mu.Unlock()
		took = append(took, d)
		if problem != "" {
			wrong = append(wrong, problem)
		}
	}
	end := time.Now().Add(long)
	var all sync.WaitGroup
	for i := range people {
		all.Go(func() {
			who, path := person(t), fmt.Sprintf("/drink/p%d.yaml", i)
			text, base := string(twelve), s.base(t, path)
			time.Sleep(rand.N(pause))
			for n := 0; time.Now().Before(end); n++ {
				next := strings.Replace(text, "- 20 g lemon cordial", fmt.Sprintf("- %d g lemon cordial", 10+rand.IntN(40)), 1)
				began := time.Now()
				answer, err := who.PostForm(s.url+path, url.Values{"text": {next}, "base": {base}})
				if err != nil {
					note(time.Since(began), err.Error())
					return
				}
				status, page := read(t, answer, err)
				problem := ""
				if status != 200 || strings.Contains(page, `class="fault`) {
					problem = fmt.Sprintf("%d: %.200s", status, page)
				}
				note(time.Since(began), problem)
				if n%4 == 3 {
					answer, err := who.PostForm(s.url+path+"/save", url.Values{"text": {next}, "base": {base}})
					if status, _ := read(t, answer, err); status != http.StatusSeeOther {
						note(0, fmt.Sprintf("a save: %d", status))
					}
					base = s.base(t, path)
					mu.Lock()
					saves++
					mu.Unlock()
				}
				time.Sleep(max(0, pause-time.Since(began)))
			}
		})
	}
	all.Wait()
	slices.Sort(took)
	at := func(share float64) time.Duration {
		return took[int(share*float64(len(took)-1))].Round(time.Millisecond)
	}
	peak, after := held(t, s.process.Pid, "VmHWM"), held(t, s.process.Pid, "VmRSS")
	t.Logf("%d changes and %d saves in %s: half within %s, 95 of 100 within %s, all within %s; memory %d MB at first, %d MB at the end, %d MB at most",
		len(took), saves, long, at(0.5), at(0.95), at(1), before>>20, after>>20, peak>>20)
	assert.Empty(t, wrong)
	assert.Less(t, peak, int64(most))
	drafts, err := os.ReadDir(filepath.Join(s.dir, ".sipsum", "unfinished"))
	if err == nil {
		assert.Empty(t, drafts)
	}
}

// held gives what the system says that a process holds, in bytes; 0 where the system does not say it so.
func held(t *testing.T, pid int, what string) int64 {
	t.Helper()
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		return 0
	}
	found := regexp.MustCompile(`(?m)^` + what + `:\s+(\d+) kB`).FindSubmatch(text)
	require.NotNil(t, found, what)
	n, err := strconv.ParseInt(string(found[1]), 10, 64)
	require.NoError(t, err)
	return n << 10
}
