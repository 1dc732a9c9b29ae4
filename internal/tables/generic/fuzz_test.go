package generic

import (
	"context"
	"testing"
	"testing/fstest"

	"sipsum/internal/tables/tablestest"
)

// FuzzGeneric reads a mapping file and a table of any bytes: it must end, give
// only legal values, and refuse with a place.
func FuzzGeneric(f *testing.F) {
	const dir = "../../../testdata/tables/generic"
	const small = "role,column,as,unit,per,why\nfile,,house.csv,,,\ntitle,,T,,,\nedition,,1,,,\nlicence,,L,,,\ncode,id,,,,\nname,food,,,,\n"
	f.Add(tablestest.Bytes(f, dir, mapFile), tablestest.Bytes(f, dir, "house.csv"))
	f.Add([]byte(small+"value,acid,CITAC,g,100 ml,\ndensity,d,,g/ml,,\ntrace,,Tr,,,\nbelow,,<,,,\n"), []byte("id,food,acid,d\n1,x,1e12,0.1\n2,y,<1e-12,\n3,z,Tr,1\n"))
	f.Add([]byte(small+"value,acid,keep,%,,\nignore,*,,,,\nheader,,3,,,\n"), []byte("a title\n\nid,food,acid\n1,\xe9,\"5\n"))
	f.Fuzz(func(t *testing.T, mapping, house []byte) {
		files := fstest.MapFS{mapFile: {Data: mapping}, "house.csv": {Data: house}}
		release, err := open(context.Background(), files, "fuzz", mapFile, "")
		tablestest.Legal(t, release, err)
	})
}
