package htmlreport_test

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"sipsum/internal/report/json"
	"sipsum/internal/report/reporttest"
	"sipsum/internal/sheet"
)

// onPage is a figure on a page: where the documents have it, in which unit it stands, its text.
type onPage struct{ path, unit, text string }

// figuresOn reads the figures of a page by their data-figure.
func figuresOn(t *testing.T, page string) []onPage {
	t.Helper()
	decoder := xml.NewDecoder(strings.NewReader(page))
	decoder.Strict, decoder.AutoClose, decoder.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	var list []onPage
	for reading := (*onPage)(nil); ; {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			return list
		}
		require.NoError(t, err)
		switch x := token.(type) {
		case xml.StartElement:
			for _, a := range x.Attr {
				if a.Name.Local == "data-figure" {
					reading = &onPage{path: a.Value}
				}
			}
			for _, a := range x.Attr {
				if a.Name.Local == "data-unit" && reading != nil {
					reading.unit = a.Value
				}
			}
		case xml.CharData:
			if reading != nil {
				reading.text = strings.ReplaceAll(strings.TrimSpace(string(x)), "\u00a0", " ")
				list, reading = append(list, *reading), nil
			}
		}
	}
}

// document is a document of the program, read as anybody reads it.
type document map[string]any

func documentOf(t *testing.T, s *sheet.Sheet) document {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, jsonreport.Sheet(&out, s))
	var d document
	require.NoError(t, json.Unmarshal(out.Bytes(), &d))
	return d
}

// at follows names and list places into a document; nil: there is nothing.
func at(d any, path ...string) any {
	for _, name := range path {
		m, ok := d.(map[string]any)
		if doc, is := d.(document); is {
			m, ok = doc, true
		}
		if !ok {
			return nil
		}
		d = m[name]
	}
	return d
}

// under finds the entry of a list that has a name.
func under(list any, key, name string) any {
	entries, _ := list.([]any)
	for _, e := range entries {
		if at(e, key) == name {
			return e
		}
	}
	return nil
}

// liquidKeys are where the documents have a row of a liquid.
var liquidKeys = map[string][]string{
	"pH at 25 °C": {"ph_meter"}, "titratable acidity": {"titratable_acidity"}, "refractometer": {"brix"}, "with its acid, °Bx": {"brix_acid_corrected"},
	"density at 20 °C": {"density"}, "°Brix ÷ titratable acidity": {"brix_acid_ratio"}, "buffer, a litre by one pH": {"buffer_capacity"},
	"acid that minerals hold, /l": {"strong_ion_difference"}, "carbon dioxide": {"co2"},
}

// foamKeys are where the documents have a row of a foam.
var foamKeys = map[string]string{
	"nitrous oxide, charged": "charge", "carbon dioxide, charged": "charge", "in the liquid, closed": "dissolved", "above it": "head", "pressure above the air's": "pressure",
	"as liquid": "liquid", "overrun, as read": "overrun", "liquid, by volume": "liquid_share", "as foam": "volume", "density as foam": "density",
}

// inDocument finds the figure of a page in the document, and the object that it stands in.
func inDocument(d document, f onPage) (value any, of any) {
	head, rest, _ := strings.Cut(f.path, ".")
	last := rest[strings.LastIndex(rest, ".")+1:]
	key := strings.TrimSuffix(rest, "."+last)
	switch head {
	case "size":
		of = at(d, "brief", "serving", key)
	case "serving", "share":
		senses, _ := at(d, "brief", "senses").([]any)
		for _, sense := range senses {
			if head == "serving" {
				if x := under(at(sense, "figures"), "key", key); x != nil {
					of = at(x, "serving")
				}
				continue
			}
			tag, food, _ := strings.Cut(rest, ".")
			if x := under(at(under(at(sense, "figures"), "key", tag), "ingredients"), "food", food); x != nil {
				return at(x, "share"), x
			}
		}
	case "evidence":
		of = at(d, "assay", "serving", "constituents", key)
	case "flow":
		y := under(at(d, "yields"), "component", key)
		switch last {
		case "in", "used":
			return at(y, last+"_g"), y
		case "glass":
			return at(y, "out_g").(float64) / at(d, "drink", "serves").(float64), y
		}
		return at(under(at(y, "steps"), "path", last), "out_g"), y
	case "foam":
		of = at(under(at(d, "assay", "foams"), "step", key), foamKeys[last])
		return at(of, "mean"), of
	case "minutes":
		points, _ := at(under(at(d, "assay", "minutes", "axes"), "key", key), "points").([]any)
		i, err := strconv.Atoi(last)
		if err != nil || i >= len(points) {
			return nil, nil
		}
		return at(points[i], "mean"), points[i]
	case "liquid":
		name, row, _ := strings.Cut(rest, ".")
		of = at(d, "assay", "chemistry")
		if name != "" {
			of = at(under(at(d, "assay", "components"), "name", name), "chemistry")
		}
		if pH, ok := strings.CutPrefix(row, "to pH "); ok {
			return at(of, "titratable_acidity_to", pH, "mean"), of
		}
		keys := liquidKeys[row]
		if keys == nil && strings.HasPrefix(row, "pH at ") {
			keys = []string{"ph"}
		}
		of = at(of, keys...)
		return at(of, "mean"), of
	}
	return at(of, last), of
}

var thousandths = map[string]float64{"g>mg": 1e3, "mg>µg": 1e3, "g>µg": 1e6}

// rounds reports whether a text is a number rounded to some place, upwards if it is a bound.
func rounds(text string, x float64, bound bool) bool {
	for places := 6; places >= -4; places-- {
		step := math.Pow10(-places)
		for _, y := range []float64{math.Round(x/step) * step, math.Ceil(x/step-1e-9) * step} {
			if strconv.FormatFloat(y, 'f', max(places, 0), 64) == text {
				return true
			}
			if !bound {
				break
			}
		}
	}
	return false
}

var plainNumber = regexp.MustCompile(`^(?:≥ )?([0-9.]+)(?: (\S+))?`)

// Each number on the page is that of the documents, rounded.
func TestFiguresOnThePageAreThoseOfTheDocuments(t *testing.T) {
	all := reporttest.Demos(t, "eu", "us")
	for name, text := range reporttest.PaperDrinks(t) {
		all[name] = reporttest.Read(t, text)
	}
	all["foamed"] = reporttest.Read(t, "drink: Foamed\nserves: 1\nat: 6 °C\nglass: 200 ml\ncomponents:\n  veil:\n    ingredients: [200 g core:cream-heavy, 20 g core:sugar-white]\n    steps: [foam: {charge: 8 g, gas: N2O, bottle: 0.7 l, at: 4 °C, overrun: 150 %}]\nbuild: [100 g core:cold-brew, 60 ml veil]\n")
	for name, s := range all {
		d := documentOf(t, s)
		kinds := map[string]int{}
		for _, f := range figuresOn(t, onSheet(t, s, "a4")) {
			value, of := inDocument(d, f)
			kinds[f.path[:strings.Index(f.path, ".")]]++
			if f.text == "unknown" {
				assert.Nil(t, at(of, "mean"), "%s, %s", name, f.path)
				continue
			}
			x, ok := value.(float64)
			if !assert.True(t, ok, "%s: the document has no %s (%s)", name, f.path, f.text) {
				continue
			}
			if share, is := strings.CutSuffix(f.text, " %"); is && strings.HasPrefix(f.path, "share.") {
				x *= 100
				f.text = share
			}
			if strings.HasPrefix(f.text, "< ") || strings.HasPrefix(f.text, "> ") {
				limit, err := strconv.ParseFloat(f.text[2:], 64)
				require.NoError(t, err, f.text)
				assert.Equal(t, f.text[0] == '<', x < limit, "%s, %s: %s and %v", name, f.path, f.text, x)
				continue
			}
			found := plainNumber.FindStringSubmatch(f.text)
			if !assert.NotNil(t, found, "%s, %s: %q", name, f.path, f.text) {
				continue
			}
			shown := f.unit
			if shown == "" {
				shown = found[2]
			}
			if unit, _ := at(of, "unit").(string); thousandths[unit+">"+shown] != 0 {
				x *= thousandths[unit+">"+shown]
			}
			assert.True(t, rounds(found[1], x, strings.HasSuffix(f.path, ".up_to")), "%s, %s: the page says %s, the document %v", name, f.path, f.text, x)
		}
		for _, kind := range []string{"size", "serving", "share", "evidence", "flow"} {
			assert.Positive(t, kinds[kind], "%s: no figure of %s", name, kind)
		}
	}
	assert.True(t, rounds("480", 478.3, false))
	assert.False(t, rounds("490", 478.3, false))
	assert.False(t, rounds("479", 478.3, false))
	assert.True(t, rounds("479", 478.3, true))
}
