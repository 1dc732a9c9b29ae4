package sweep_test

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"sipsum/internal/assay"
	"sipsum/internal/assay/assaytest"
	"sipsum/internal/fail"
)

const (
	// randomDrinks is how many the whole sweep takes; the sample takes each n-th.
	randomDrinks     = 2300
	everyNthDrink    = 73
	fewestOfEach     = 30  // of each group, step and reading, in the whole sweep
	mostRefusedShare = 0.5 // of all drinks
)

// random is a drink of the cook: its text and what is in it. A drink whose turn it is to
// be read is made without the reading first, so that the reading may agree.
func random(k *kitchen, number int) (text string, used []use) {
	c := newCook(k, number)
	text = c.drink("", "")
	reads := number%3 == 0
	finish := stepNames[number%len(stepNames)] == "measured"
	if !reads && !finish {
		return text, c.used
	}
	kind, agree := readingNames[number/3%len(readingNames)], number/24%2 == 0
	a, err := k.run(text, assaytest.Options{Draws: 10, Seed: 1, Want: assay.Want{Whole: true}})
	if err != nil {
		return text, c.used // it is refused without a reading too
	}
	again, component, whole := newCook(k, number), "", ""
	if i := slices.IndexFunc(a.Components, func(x assay.Component) bool { return x.Name == c.names[0] }); reads && i >= 0 {
		component = c.reading(kind, agree, a.Components[i])
	}
	if finish && kind != "mass" {
		whole = c.reading(kind, agree, assay.Component{Chemistry: a.Chemistry, Constituents: a.PerServing, Mass: a.Mass})
	}
	text = again.drink(component, whole)
	if component != "" || whole != "" {
		again.note("reading", kind+map[bool]string{true: ", agreeing", false: ", contradicting"}[agree])
	}
	return text, again.used
}

// figures are what differs between refusals for one reason.
var figures = regexp.MustCompile(`"[^"]*"|core:[a-z-]+|[\d.,+e-]*\d`)

// coverage counts the drinks that have each group, step and reading.
type coverage struct {
	lock    sync.Mutex
	served  map[use]int
	refused map[string]int
	drinks  int
}

func (c *coverage) add(used []use) {
	c.lock.Lock()
	defer c.lock.Unlock()
	seen := map[use]bool{}
	for _, u := range used {
		if !seen[u] {
			seen[u] = true
			c.served[u]++
		}
	}
}

func (c *coverage) refuse(r *refusal) {
	c.lock.Lock()
	defer c.lock.Unlock()
	text := r.err.Error()
	var e *fail.Error
	if errors.As(r.err, &e) {
		text = e.Faults[0].What
	}
	c.refused[figures.ReplaceAllString(text, "…")]++
}

// report prints how often each was served and wants enough of all.
func (c *coverage) report(t *testing.T, k *kitchen) {
	t.Helper()
	want := map[string][]string{"group": order(k.groups), "step": stepNames}
	for _, r := range readingNames {
		want["reading"] = append(want["reading"], r+", agreeing", r+", contradicting")
	}
	var out strings.Builder
	for _, kind := range order(want) {
		fmt.Fprintf(&out, "%s:", kind)
		for _, name := range want[kind] {
			n := c.served[use{kind, name}]
			fmt.Fprintf(&out, " %s %d ·", name, n)
			if whole() && n < fewestOfEach {
				t.Errorf("%d drinks with the %s %s, %d wanted", n, kind, name, fewestOfEach)
			}
		}
		out.WriteString("\n")
	}
	refused := 0
	for _, why := range order(c.refused) {
		refused += c.refused[why]
		fmt.Fprintf(&out, "refused %d × %s\n", c.refused[why], why)
	}
	t.Logf("%d drinks, %d refused; served:\n%s", c.drinks, refused, out.String())
	if float64(refused) > mostRefusedShare*float64(c.drinks) {
		t.Errorf("%d of %d drinks were refused", refused, c.drinks)
	}
}

// Random drinks through random steps and readings keep every law.
func TestRandomDrinks(t *testing.T) {
	k, b := newKitchen(t), newBreaches(laws, printedLaws, refusalLaws, twinNames())
	numbers := make([]int, randomDrinks)
	for i := range numbers {
		numbers[i] = i
	}
	numbers = sample(numbers, everyNthDrink)
	c := &coverage{served: map[use]int{}, refused: map[string]int{}, drinks: len(numbers)}
	sideBySide(numbers, func(number int) {
		text, used := random(k, number)
		name := fmt.Sprintf("drink %d", number)
		s, refused := k.serve(name, text)
		if refused != nil {
			c.refuse(refused)
			if fault := refused.proper(); fault != "" {
				b.add(properRefusal.name, breach{1, name, text, fault})
			}
			return
		}
		c.add(used)
		b.judge(s, laws, printedLaws)
		b.judgeTwins(s, number)
	})
	c.report(t, k)
	b.report(t)
}
