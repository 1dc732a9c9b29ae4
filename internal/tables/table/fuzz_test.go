package table_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/fail"
)

// FuzzWorkbook reads any sheet in any workbook: it ends, and every error is one
// for people.
func FuzzWorkbook(f *testing.F) {
	for _, sheet := range []string{
		`<row r="2"><c r="A2" t="s"><v>0</v></c><c r="C2"><v>0.3</v></c></row>`,
		`<row><c t="inlineStr"><is><t>in</t><r><t>line</t></r></is></c></row><row r="9"/>`,
		`<row r="1"><c t="s"><v>99</v></c></row>`, `<row r="1"><c r="ZZ1"`,
	} {
		f.Add(sheet, `<si><t>plain</t></si><si><r><t>a_x000D_</t></r></si>`)
	}
	f.Fuzz(func(t *testing.T, sheet, texts string) {
		parts := bookParts(sheet)
		parts["xl/texts.xml"] = `<sst>` + texts + `</sst>`
		w, err := openParts(t, parts)
		if err == nil {
			_, err = readSheet(w, "Foods")
		}
		if err != nil {
			assert.Equal(t, fail.Wrong, fail.ExitCode(err), err)
		}
	})
}
