package sr

import (
	"io/fs"

	"sipsum/internal/fail"
	"sipsum/internal/tables/table"
)

// The files that are read.
const (
	foodFile      = "FOOD_DES.txt"
	valueFile     = "NUT_DATA.txt"
	columnFile    = "NUTR_DEF.txt"
	groupFile     = "FD_GROUP.txt"
	sourceFile    = "SRC_CD.txt"
	derivFile     = "DERIV_CD.txt"
	portionFile   = "WEIGHT.txt"
	footnoteFile  = "FOOTNOTE.txt"
	mandatoryHint = "FOOD_DES, NUT_DATA, NUTR_DEF, FD_GROUP and SRC_CD must be there; DERIV_CD, WEIGHT and FOOTNOTE may be"
)

// folder is the publisher's files and the name of their place for messages.
type folder struct {
	fsys fs.FS
	dir  string
}

func (f folder) has(name string) bool { return table.Has(f.fsys, name) }

// present gives the files to read, or the error that names the missing ones.
func (f folder) present() ([]string, error) {
	if info, err := fs.Stat(f.fsys, "."); err != nil || !info.IsDir() {
		return nil, fail.At(fail.Wrong, fail.Place{File: f.dir}, "is not a folder that can be read", "give the folder that holds FOOD_DES.txt and the other files")
	}
	needed := []string{foodFile, valueFile, columnFile, groupFile, sourceFile}
	return table.Present(f.fsys, f.dir, needed, []string{derivFile, portionFile, footnoteFile}, mandatoryHint)
}

// nothing stands for an optional file that is not there.
type nothing struct{ fs.File }

func (nothing) Close() error { return nil }
