package cli_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/cli"
)

const handInputs = "../../testdata/hand/inputs.yaml"

// place is where in a drink an input stands.
type place struct {
	Before, After string
	Indent        int
}

// drink writes a snippet into the place.
func (p place) drink(snippet string) string {
	text := p.Before
	if snippet != "" {
		for line := range strings.SplitSeq(snippet, "\n") {
			text += strings.Repeat(" ", p.Indent) + line + "\n"
		}
	}
	return text + p.After
}

// input is a line as a hand wrote it, and what becomes of it: what it is read as, or what each of
// its faults says and what the writer then writes.
type input struct {
	Number        int
	By, Meant, In string
	Write         string
	Reads         *string
	Says          []string
	Right         string
}

// unsealed is a document without its digest, which is of the text as well.
func unsealed(document string) string {
	return regexp.MustCompile(`(?m)^ *"proof": "[0-9a-f]{12}",$`).ReplaceAllString(document, "")
}

// hand runs a drink from the standard input through the whole path.
func hand(t *testing.T, db, text string) (out, faults string, code int) {
	t.Helper()
	var o, f bytes.Buffer
	code = cli.Main([]string{"assay", "-", "--format", "json", "--draws", "50", "--db", db}, cli.Streams{In: strings.NewReader(text), Out: &o, Err: &f, Env: func(string) string { return "" }})
	return o.String(), f.String(), code
}

// Every line of the list is read as it was meant, or refused with the line as it should be, which
// is then read; no fault is told that is none.
func TestInputsAsHandsWriteThem(t *testing.T) {
	var list struct {
		Contexts map[string]place
		Inputs   []input
	}
	text, err := os.ReadFile(handInputs)
	require.NoError(t, err)
	require.NoError(t, yaml.Unmarshal(text, &list))
	require.Len(t, list.Inputs, 60)
	db := filepath.Join(t.TempDir(), "db")
	by := map[string]int{}
	for i, in := range list.Inputs {
		by[in.By]++
		name := fmt.Sprintf("%d %s", in.Number, in.Write)
		require.Equal(t, i+1, in.Number)
		place, known := list.Contexts[in.In]
		require.True(t, known, name)
		out, faults, code := hand(t, db, place.drink(in.Write))
		if in.Reads != nil {
			require.Equal(t, 0, code, "%s\n%s", name, faults)
			want, faults, code := hand(t, db, place.drink(*in.Reads))
			require.Equal(t, 0, code, "%s\n%s", *in.Reads, faults)
			assert.True(t, unsealed(want) == unsealed(out), "%s\nis not read as\n%s", name, *in.Reads) // the documents are long
			continue
		}
		require.NotEmpty(t, in.Says, name)
		assert.Equal(t, 2, code, name)
		assert.Equal(t, len(in.Says), len(faultsOf(t, faults)), "%s\n%s", name, faults)
		for _, fault := range faultsOf(t, faults) {
			assert.True(t, saysOne(fault, in.Says), "%s\nis told: %s", name, fault)
		}
		for _, said := range in.Says {
			assert.Contains(t, strings.Join(faultsOf(t, faults), "\n"), said, name)
		}
		_, faults, code = hand(t, db, place.drink(in.Right))
		assert.Contains(t, []int{0, 3}, code, "%s\n%s", in.Right, faults) // 3: a reading of which that recipe makes something else
	}
	assert.Equal(t, map[string]int{"a barista without the grammar": 30, "the issue": 30}, by)
}

// faultsOf gives the faults that were told, each as one text.
func faultsOf(t *testing.T, told string) []string {
	t.Helper()
	var document struct {
		Errors []struct{ What, Do string }
	}
	require.NoError(t, json.Unmarshal([]byte(told), &document), told)
	var faults []string
	for _, e := range document.Errors {
		faults = append(faults, e.What+" ("+e.Do+")")
	}
	return faults
}

func saysOne(fault string, expected []string) bool {
	for _, e := range expected {
		if strings.Contains(fault, e) {
			return true
		}
	}
	return false
}
