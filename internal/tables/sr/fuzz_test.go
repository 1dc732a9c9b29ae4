package sr

import (
	"context"
	"testing"
	"testing/fstest"

	"sipsum/internal/tables/tablestest"
)

// FuzzSR reads a release whose foods, values, portions and footnotes are any
// bytes: it must end, give only legal values, and refuse with file and line.
func FuzzSR(f *testing.F) {
	const dir = "../../../testdata/tables/sr"
	fixed := fstest.MapFS{}
	for _, name := range []string{columnFile, groupFile, sourceFile, derivFile} {
		fixed[name] = &fstest.MapFile{Data: tablestest.Bytes(f, dir, name)}
	}
	const foods = "~01001~^~0100~^~Butter, salted~^~B~^~~^~~^~Y~^~~^0^~~^6.38^4.27^8.79^3.87\r\n"
	const values = "~01001~^~203~^0.85^16^0.074^~1~^~~^~~^~~^^^^^^^~~^11/1976^\r\n"
	f.Add([]byte(foods), []byte(values), []byte("~01001~^1^1^~pat (1\" sq)~^5.0^^\r\n"), []byte("~01001~^~01~^~D~^~~^~\x94text\x94~\r\n"))
	f.Add([]byte(foods+"~01002~^~0100~^~x~^~~^~~^~~^~~^~~^200^~~^^^^\r\n"), []byte(values+values), []byte{}, []byte{0})
	f.Add([]byte("~01001"), []byte("^^^^^^^^^^^^^^^^^\n"), []byte("~^~^"), []byte("\r\n"))
	f.Fuzz(func(t *testing.T, foods, values, portions, footnotes []byte) {
		files := fstest.MapFS{foodFile: {Data: foods}, valueFile: {Data: values}, portionFile: {Data: portions}, footnoteFile: {Data: footnotes}}
		for name, file := range fixed {
			files[name] = file
		}
		release, err := open(context.Background(), folder{fsys: files, dir: "fuzz"}, "")
		tablestest.Legal(t, release, err)
	})
}
