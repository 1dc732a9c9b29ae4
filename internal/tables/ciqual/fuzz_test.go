package ciqual

import (
	"context"
	"testing"
	"testing/fstest"

	"sipsum/internal/tables/tablestest"
)

// FuzzCiqual reads a workbook with names, and an XML set, of any bytes: it must
// end, give only legal values, and refuse with a place.
func FuzzCiqual(f *testing.F) {
	seed := func(folder, name string) []byte { return tablestest.Bytes(f, "../../../testdata/tables", folder, name) }
	book, names := seed("ciqual", "ciqual.csv"), seed("ciqual", "alim_utf8.xml")
	f.Add(book, names, false)
	f.Add([]byte("alim_grp_code;alim_ssgrp_code;alim_ssssgrp_code;alim_code;alim_nom_fr;Eau (g/100 g);Polyols totaux (g/100 g);Glucides (g/100 g)\n01;02;03;9621;x;< 0,5;traces;-\n01;02;03;9621.0;\"x\";1;2;1\n"), []byte("<TABLE/>"), false)
	f.Add(seed("ciqual-xml", "compo_2020_07_07.xml"), seed("ciqual-xml", "alim_2020_07_07.xml"), true)
	f.Add([]byte("<TABLE><COMPO><alim_code>1</alim_code><const_code>400</const_code><teneur>< 1</teneur></COMPO></TABLE>"), []byte("<table><alim><alim_code>1</alim_code><alim_nom_fr>a&lt;<1</alim_nom_fr><x/></alim></table>"), true)
	f.Fuzz(func(t *testing.T, values, names []byte, set bool) {
		files := fstest.MapFS{"alim.xml": {Data: names}}
		if set {
			files["compo.xml"] = &fstest.MapFile{Data: values}
		} else {
			files["ciqual.csv"] = &fstest.MapFile{Data: values}
		}
		release, err := open(context.Background(), files, "fuzz", "")
		tablestest.Legal(t, release, err)
	})
}
