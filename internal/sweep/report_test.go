package sweep_test

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"sipsum/internal/constituent"
)

// reportEnv names a file for the report; wholeEnv set to "all" asks for everything, to a
// number for each n-th.
const (
	reportEnv = "SIPSUM_SWEEP_REPORT"
	wholeEnv  = "SIPSUM_SWEEP"
)

func whole() bool { return os.Getenv(wholeEnv) == "all" }

// case of a broken law.
type breach struct {
	size             float64
	name, text, what string
}

// ledger of broken laws; safe for several goroutines.
type breaches struct {
	lock  sync.Mutex
	of    map[string][]breach
	laws  []law
	asked int
}

func newBreaches(laws ...[]law) *breaches {
	return &breaches{of: map[string][]breach{}, laws: slices.Concat(laws...)}
}

// add keeps the worst breach of a law by a subject.
func (b *breaches) add(law string, x breach) {
	b.lock.Lock()
	defer b.lock.Unlock()
	b.of[law] = append(b.of[law], x)
}

// judge asks every law of a subject.
func (b *breaches) judge(s *subject, tables ...[]law) {
	for _, l := range slices.Concat(tables...) {
		var worst *breach
		l.broken(s, func(size float64, format string, args ...any) {
			if worst == nil || size > worst.size {
				worst = &breach{size, s.name, s.text, fmt.Sprintf(format, args...)}
			}
		})
		if worst != nil {
			b.add(l.name, *worst)
		}
	}
	b.lock.Lock()
	b.asked++
	b.lock.Unlock()
}

// worstOf is how many cases of a law are printed.
const worstOf = 3

// report prints what is broken by law: how many subjects, and the worst of them.
func (b *breaches) report(t *testing.T) {
	t.Helper()
	var out strings.Builder
	broken := 0
	for _, l := range b.laws {
		list := b.of[l.name]
		if len(list) == 0 {
			continue
		}
		broken++
		slices.SortStableFunc(list, func(x, y breach) int {
			switch {
			case x.size > y.size:
				return -1
			case x.size < y.size:
				return 1
			}
			return strings.Compare(x.name, y.name)
		})
		fmt.Fprintf(&out, "\n%s: broken by %d of %d\n  law: %s (%s)\n", l.name, len(list), b.asked, l.says, l.from)
		for i, x := range list {
			if i == worstOf {
				break
			}
			fmt.Fprintf(&out, "  %s: %s\n%s", x.name, x.what, indented(x.text))
		}
	}
	head := fmt.Sprintf("%s: %d subjects, %d laws, %d of them broken\n", t.Name(), b.asked, len(b.laws), broken)
	if file := os.Getenv(reportEnv); file != "" {
		appendTo(t, file, head+out.String()+"\n")
	}
	t.Log(head)
	if broken > 0 {
		t.Errorf("%s%s", head, out.String())
	}
}

func indented(text string) string {
	var out strings.Builder
	for line := range strings.SplitSeq(strings.TrimSpace(text), "\n") {
		out.WriteString("      | " + line + "\n")
	}
	return out.String()
}

func appendTo(t *testing.T, file, text string) {
	t.Helper()
	f, err := os.OpenFile(file, os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o644)
	if err == nil {
		_, err = f.WriteString(text)
	}
	if err == nil {
		err = f.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
}

// side by side runs f for every item on all cores.
func sideBySide[T any](items []T, f func(T)) {
	work := make(chan T)
	var done sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		done.Go(func() {
			for item := range work {
				f(item)
			}
		})
	}
	for _, item := range items {
		work <- item
	}
	close(work)
	done.Wait()
}

// sample takes every n-th item, unless more or everything is asked for.
func sample[T any](items []T, n int) []T {
	if asked, err := strconv.Atoi(os.Getenv(wholeEnv)); err == nil {
		n = asked
	}
	if whole() || n <= 1 {
		return items
	}
	var some []T
	for i := 0; i < len(items); i += n {
		some = append(some, items[i])
	}
	return some
}

// rowsOf reads a file of data/ by its header.
var rowsOf = func() func(name string) []map[string]string {
	var lock sync.Mutex
	files := map[string][]map[string]string{}
	return func(name string) []map[string]string {
		lock.Lock()
		defer lock.Unlock()
		if rows, ok := files[name]; ok {
			return rows
		}
		files[name] = readCSV(filepath.Join("..", "..", "data", name))
		return files[name]
	}
}()

func readCSV(path string) []map[string]string {
	file, err := os.Open(path)
	if err != nil {
		panic(err)
	}
	defer file.Close()
	all, err := csv.NewReader(file).ReadAll()
	if err != nil {
		panic(err)
	}
	var rows []map[string]string
	for _, record := range all[1:] {
		row := map[string]string{}
		for i, key := range all[0] {
			row[key] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func must(id string) *constituent.Constituent { return constituent.Must(constituent.ID(id)) }
