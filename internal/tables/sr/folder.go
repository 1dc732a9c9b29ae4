package sr

import (
	"io/fs"
	"strings"

	"sipsum/internal/fail"
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

func (f folder) has(name string) bool {
	info, err := fs.Stat(f.fsys, name)
	return err == nil && info.Mode().IsRegular()
}

// present gives the files to read, or the error that names the missing ones.
func (f folder) present() ([]string, error) {
	if info, err := fs.Stat(f.fsys, "."); err != nil || !info.IsDir() {
		return nil, fail.At(fail.Wrong, fail.Place{File: f.dir}, "is not a folder that can be read", "give the folder that holds FOOD_DES.txt and the other files")
	}
	var names, missing []string
	for _, name := range []string{foodFile, valueFile, columnFile, groupFile, sourceFile} {
		if f.has(name) {
			names = append(names, name)
		} else {
			missing = append(missing, name)
		}
	}
	if len(missing) > 0 {
		return nil, fail.At(fail.Wrong, fail.Place{File: f.dir}, "lacks "+strings.Join(missing, ", "), mandatoryHint)
	}
	for _, name := range []string{derivFile, portionFile, footnoteFile} {
		if f.has(name) {
			names = append(names, name)
		}
	}
	return names, nil
}

// nothing stands for an optional file that is not there.
type nothing struct{ fs.File }

func (nothing) Close() error { return nil }
