package jsonreport_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/json"
	"sipsum/internal/report/reporttest"
)

// A menu is a drink a line, each a document of its own, with a state for every class of
// every set of rules.
func TestAMenuIsADrinkALine(t *testing.T) {
	s := reporttest.Read(t, reporttest.HostileDrink())
	var out bytes.Buffer
	require.NoError(t, jsonreport.Menu(&out, reporttest.Menu(s.Rules, s, s)))
	lines := strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
	require.Len(t, lines, 2)
	for _, line := range lines {
		assert.True(t, strings.HasPrefix(line, `{"schema":"sipsum.menu/1",`))
		var document struct {
			Drink  struct{ Name string }
			Cards  []struct{ Rules string }
			Matrix []struct {
				Rules   string
				Classes []struct{ Code, State string }
			}
		}
		require.NoError(t, json.Unmarshal([]byte(line), &document))
		assert.Equal(t, s.Assay.Drink.Name, document.Drink.Name)
		require.Len(t, document.Matrix, 2)
		require.Len(t, document.Cards, 2)
		for i, x := range document.Matrix {
			assert.Equal(t, s.Rules[i], x.Rules)
			assert.NotEmpty(t, x.Classes)
			for _, c := range x.Classes {
				assert.Contains(t, []string{"contains", "may contain", "to check"}, c.State, "%s: nobody has assessed one of its foods", c.Code)
			}
		}
	}
}

// A card that is handed out says the same in its document as on paper.
func TestAHandedOutCardKeepsItsWords(t *testing.T) {
	s := reporttest.Read(t, reporttest.HostileDrink())
	var out bytes.Buffer
	require.NoError(t, jsonreport.HandedOut(&out, s, s.GuestLeaf()))
	var document struct {
		Schema string
		Leaf   struct {
			Kind   string
			Blocks []struct {
				Role  string
				Lines []struct{ Lead, Strong, Text string }
			}
		}
	}
	require.NoError(t, json.Unmarshal(out.Bytes(), &document))
	assert.Equal(t, "sipsum.card/1", document.Schema)
	assert.Equal(t, "guest", document.Leaf.Kind)
	boxed := 0
	for _, b := range document.Leaf.Blocks {
		if b.Role == "boxed" {
			boxed++
			assert.Equal(t, "Milk", b.Lines[0].Strong)
		}
	}
	assert.Equal(t, 1, boxed)
}
