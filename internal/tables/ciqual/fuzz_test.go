package ciqual

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path"
	"testing"
	"testing/fstest"

	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
)

// FuzzCiqual reads a workbook with names, and an XML set, of any bytes: it must
// end, give only legal values, and refuse with a place.
func FuzzCiqual(f *testing.F) {
	seed := func(names ...string) []byte {
		content, err := os.ReadFile("../../../testdata/tables/" + path.Join(names...))
		if err != nil {
			f.Fatal(err)
		}
		return content
	}
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
		checkAny(t, files)
	})
}

func checkAny(t *testing.T, files fs.FS) {
	release, err := open(context.Background(), files, "fuzz", "")
	if err != nil {
		checkFault(t, err)
		return
	}
	for f, err := range release.Foods {
		if err != nil {
			checkFault(t, err)
			return
		}
		if len(f.Names) == 0 || f.Names[0].Text == "" || f.ID.Code == "" {
			t.Fatalf("no name or code: %+v", f)
		}
		for _, v := range f.Values {
			if v.Amount < 0 || v.Low < 0 || v.High < 0 || v.Limit < 0 || (v.State >= estimate.Trace) == food.Stated(v.Amount) || v.State == estimate.Below && !(v.Limit > 0) {
				t.Fatalf("%s: %+v", f.ID, v)
			}
		}
	}
}

func checkFault(t *testing.T, err error) {
	var faults *fail.Error
	if !errors.As(err, &faults) || faults.Faults[0].File == "" || faults.Exit != fail.Wrong {
		t.Fatalf("not a fault with a place: %v", err)
	}
}
