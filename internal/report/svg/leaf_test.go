package svgreport_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/reporttest"
	"sipsum/internal/report/svg"
	"sipsum/internal/sheet"
)

var update = flag.Bool("update", false, "rewrite the golden file")

func printed(t *testing.T, l *sheet.Leaf) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, svgreport.Leaf(&out, l))
	return out.String()
}

func TestLeafKeepsItsForm(t *testing.T) {
	got := printed(t, reporttest.Leaf())
	const path = "testdata/leaf.svg"
	if *update {
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), got, "run with -update and read the difference")
}

// texts reads a drawing as XML: what it says, and which elements it has.
func texts(t *testing.T, drawing string) (said string, elements map[string]int) {
	t.Helper()
	elements = map[string]int{}
	var b strings.Builder
	for decoder := xml.NewDecoder(strings.NewReader(drawing)); ; {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return b.String(), elements
		}
		require.NoError(t, err)
		switch x := token.(type) {
		case xml.StartElement:
			elements[x.Name.Local]++
		case xml.CharData:
			b.Write(x)
			b.WriteByte(' ')
		}
	}
}

// A drawing is XML whatever the names, holds nothing that runs or is fetched, and says all
// that the leaf says.
func TestDrawingsOfEveryLeaf(t *testing.T) {
	for kind, l := range reporttest.Leaves(reporttest.Read(t, reporttest.HostileDrink())) {
		drawing := printed(t, l)
		said, elements := texts(t, drawing)
		for element := range elements {
			assert.Contains(t, []string{"svg", "title", "style", "defs", "pattern", "path", "rect", "text"}, element, kind)
		}
		assert.NotContains(t, drawing, "href", kind)
		assert.NotContains(t, drawing, "url(http", kind)
		squeezed := strings.Join(strings.Fields(said), "")
		for _, b := range l.Blocks {
			if b.Role == sheet.Aside {
				continue
			}
			for _, line := range b.Lines {
				for _, word := range strings.Fields(line.Strong + " " + line.Text) {
					assert.Contains(t, squeezed, word, kind)
				}
			}
			if b.Grid == nil {
				continue
			}
			for _, r := range b.Grid.Rows {
				for _, c := range r.Cells {
					assert.Contains(t, squeezed, strings.Join(strings.Fields(c.Text), ""), "%s, %s", kind, r.Label)
				}
			}
		}
	}
}

func TestWordsThatNoLineHoldsAreBroken(t *testing.T) {
	l := &sheet.Leaf{Title: strings.Repeat("w", 119), Blocks: []sheet.Block{{Lines: []sheet.Line{{Text: strings.Repeat("m", 400)}}}}}
	for line := range strings.Lines(printed(t, l)) {
		assert.Less(t, len(line), 400, line)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestErrorsOfTheWriterAreReported(t *testing.T) {
	assert.ErrorContains(t, svgreport.Leaf(full{}, reporttest.Leaf()), "disk full")
}
