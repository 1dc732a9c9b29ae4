package afcd

import (
	"archive/zip"
	"bytes"
	"context"
	"fmt"
	"html"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"sipsum/internal/tables/tablestest"
)

// workbook packs sheets, each with its name and lines of cells between tabs.
func workbook(t testing.TB, sheets [][2]string) []byte {
	t.Helper()
	var packed bytes.Buffer
	z := zip.NewWriter(&packed)
	part := func(name, text string) {
		w, err := z.Create(name)
		require.NoError(t, err)
		_, err = w.Write([]byte(text))
		require.NoError(t, err)
	}
	const kinds = "http://schemas.openxmlformats.org/officeDocument/2006/relationships/"
	part("_rels/.rels", `<Relationships><Relationship Id="a" Type="`+kinds+`officeDocument" Target="book.xml"/></Relationships>`)
	list, related := "", ""
	for i, s := range sheets {
		name, text, id := s[0], s[1], fmt.Sprintf("s%d", i)
		list += fmt.Sprintf(`<sheet name="%s" id="%s"/>`, html.EscapeString(name), id)
		related += fmt.Sprintf(`<Relationship Id="%s" Type="%sworksheet" Target="%s.xml"/>`, id, kinds, id)
		var rows strings.Builder
		for line := range strings.SplitSeq(text, "\n") {
			rows.WriteString("<row>")
			for cell := range strings.SplitSeq(line, "\t") {
				fmt.Fprintf(&rows, `<c t="str"><v>%s</v></c>`, html.EscapeString(cell))
			}
			rows.WriteString("</row>")
		}
		part(id+".xml", "<worksheet><sheetData>"+rows.String()+"</sheetData></worksheet>")
	}
	part("book.xml", "<workbook><sheets>"+list+"</sheets></workbook>")
	part("_rels/book.xml.rels", "<Relationships>"+related+"</Relationships>")
	require.NoError(t, z.Close())
	return packed.Bytes()
}

// FuzzAFCD reads sheets of any text: it must end, give only legal values, and
// refuse with a place.
func FuzzAFCD(f *testing.F) {
	const head = "Public Food Key\tClassification\tFood Name\tMoisture (water) (g)\tProtein (g)\tFat, total (g)\tCitric acid (g)\tC18:1 (%T)\n"
	f.Add(head+"F000001\t11301\tx\t90.1\t0.4\t0\t5.1\t0", head+"\t\t\tper 100 mL\nF000001\t11301\tx\t94.6\t0.4\t0\t5.4\t0", "Public Food Key\tDerivation\tSpecific Gravity\tAnalysed Portion\nF000001\tAnalysed\t1.05\t80% (flesh)")
	f.Add(head+"F000001\t\tx\t1e308\t0\t-1\tNaN\t", head+"F000001\t\tx\t1e-300\t1e300", "Public Food Key\tMeasure\tWeight (g)\nF000001\tcup\t1e300")
	f.Add("\n\n"+head, "a\tb", "Public Food Key\tIngredient name\tWeight\nF000001\t\t")
	f.Fuzz(func(t *testing.T, solids, liquids, more string) {
		book := workbook(t, [][2]string{{"All solids & liquids per 100 g", solids}, {"Liquids per 100 mL", liquids}, {"More", more}})
		release, err := open(context.Background(), fstest.MapFS{"a.xlsx": {Data: book}}, "fuzz", "")
		tablestest.Legal(t, release, err)
	})
}
