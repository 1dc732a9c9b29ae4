package cofid

import (
	"context"
	"testing"
	"testing/fstest"

	"sipsum/internal/tables/tablestest"
)

// FuzzCoFID reads sheets of any bytes: it must end, give only legal values, and
// refuse with a place.
func FuzzCoFID(f *testing.F) {
	const dir = "../../../testdata/tables/cofid"
	f.Add(tablestest.Bytes(f, dir, "1.2 Factors.csv"), tablestest.Bytes(f, dir, "1.3 Proximates.csv"))
	f.Add([]byte("Food Code,Food Name,Specific gravity\n1,x,0.11\n"), []byte("Food Code,Food Name,Group,Water (g),Water (mg)\n1,x,Q,1e12,Tr\n1,x,Q,Tr,N\n"))
	f.Add([]byte(",Food Name,Description\n"), []byte("a title\n\n,Food Name,Group,Water (g)\n,,,\n1,\xe9,Q,< 0.1\n"))
	f.Fuzz(func(t *testing.T, factors, proximates []byte) {
		files := fstest.MapFS{"a.csv": {Data: factors}, "b.csv": {Data: proximates}}
		release, err := open(context.Background(), files, "fuzz", "")
		tablestest.Legal(t, release, err)
	})
}
