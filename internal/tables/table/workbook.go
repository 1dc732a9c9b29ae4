package table

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"strings"

	"sipsum/internal/fail"
)

// maxBookFile is the size of the largest workbook that is read, packed.
const maxBookFile = 128 << 20

// Workbook is an .xlsx file (Office Open XML, ECMA-376), held in memory packed.
// Its sheets are read row by row.
type Workbook struct {
	zip     *zip.Reader
	name    string // for messages
	again   string // what to do about a damaged file
	sheets  []sheet
	texts   []string // the shared strings
	formats []string // the number format of each style
}

// sheet is a sheet of a workbook and the part that holds it.
type sheet struct{ name, part string }

// OpenWorkbook opens a workbook and reads its list of sheets, shared strings
// and styles. dir names the place of the file in messages; again is the advice for
// a damaged file.
func OpenWorkbook(fsys fs.FS, dir, name, again string) (*Workbook, error) {
	w := &Workbook{name: path.Join(dir, name), again: again}
	raw, err := w.read(fsys, name)
	if err != nil {
		return nil, err
	}
	w.zip, err = zip.NewReader(bytes.NewReader(raw), int64(len(raw)))
	if err != nil && !errors.Is(err, zip.ErrInsecurePath) {
		if bytes.HasPrefix(raw, []byte("\xd0\xcf\x11\xe0")) {
			return nil, w.wrong("is a workbook of the old kind (.xls), or has a password", "save it as .xlsx, without a password")
		}
		return nil, w.wrong("is not a whole .xlsx workbook: "+err.Error(), again)
	}
	if what := unsafeArchive(w.zip.File, int64(len(raw)), maxBook); what != "" {
		return nil, w.wrong(what, again)
	}
	if err := w.open(); err != nil {
		return nil, err
	}
	return w, nil
}

func (w *Workbook) read(fsys fs.FS, name string) ([]byte, error) {
	file, err := fsys.Open(name)
	if err != nil {
		return nil, fail.Because(fail.Wrong, err, "cannot read "+w.name, w.again)
	}
	defer file.Close()
	raw, err := io.ReadAll(io.LimitReader(file, maxBookFile+1))
	switch {
	case err != nil:
		return nil, fail.Because(fail.Wrong, err, "cannot read "+w.name, w.again)
	case len(raw) > maxBookFile:
		return nil, w.wrong(fmt.Sprintf("is a workbook of more than %d MiB", maxBookFile>>20), w.again)
	}
	return raw, nil
}

// Sheets gives the names of the sheets in their order.
func (w *Workbook) Sheets() []string {
	names := make([]string, len(w.sheets))
	for i, s := range w.sheets {
		names[i] = s.name
	}
	return names
}

// relation is an entry of a .rels part.
type relation struct {
	ID     string `xml:"Id,attr"`
	Type   string `xml:"Type,attr"`
	Target string `xml:"Target,attr"`
}

// is reports whether the relation is of a kind; transitional and strict files
// write the kind under two addresses with the same ending.
func (r relation) is(kind string) bool { return strings.HasSuffix(r.Type, "/"+kind) }

// open follows the relations from the package to the workbook, its sheets,
// shared strings and styles.
func (w *Workbook) open() error {
	top, err := w.relations("")
	if err != nil {
		return err
	}
	for _, r := range top {
		if !r.is("officeDocument") {
			continue
		}
		part := target("", r.Target)
		related, err := w.relations(part)
		if err != nil {
			return err
		}
		if err := w.listSheets(part, related); err != nil {
			return err
		}
		for _, r := range related {
			switch {
			case r.is("sharedStrings"):
				err = w.readTexts(target(part, r.Target))
			case r.is("styles"):
				err = w.readFormats(target(part, r.Target))
			}
			if err != nil {
				return err
			}
		}
		return nil
	}
	return w.wrong("is not an .xlsx workbook: it names no main part", w.again)
}

func (w *Workbook) listSheets(part string, related []relation) error {
	var book struct {
		Sheets []struct {
			Name string     `xml:"name,attr"`
			Rest []xml.Attr `xml:",any,attr"`
		} `xml:"sheets>sheet"`
	}
	if err := w.decode(part, &book); err != nil {
		return err
	}
	byID := map[string]relation{}
	for _, r := range related {
		byID[r.ID] = r
	}
	for _, s := range book.Sheets {
		for _, attr := range s.Rest {
			if r := byID[attr.Value]; attr.Name.Local == "id" && r.is("worksheet") {
				w.sheets = append(w.sheets, sheet{name: s.Name, part: target(part, r.Target)})
			}
		}
	}
	if len(w.sheets) == 0 {
		return w.wrong("has no sheet with cells", w.again)
	}
	return nil
}

// relations reads the .rels part that belongs to a part; "" is the package.
func (w *Workbook) relations(part string) ([]relation, error) {
	var all struct {
		Relations []relation `xml:"Relationship"`
	}
	dir, base := path.Split(part)
	err := w.decode(dir+"_rels/"+base+".rels", &all)
	return all.Relations, err
}

// target resolves the target of a relation of a part.
func target(part, to string) string {
	if strings.HasPrefix(to, "/") {
		return strings.TrimPrefix(path.Clean(to), "/")
	}
	return path.Join(path.Dir(part), to)
}

// decode reads a whole small part.
func (w *Workbook) decode(part string, into any) error {
	in, err := w.part(part)
	if err != nil {
		return err
	}
	defer in.Close()
	d := xml.NewDecoder(&shortTexts{Reader: in})
	if err := d.Decode(into); err != nil {
		return w.damaged(part, err)
	}
	if _, err := io.Copy(io.Discard, in); err != nil { // checks the sum of the whole part
		return w.damaged(part, err)
	}
	return nil
}

func (w *Workbook) part(name string) (io.ReadCloser, error) {
	in, err := w.zip.Open(name)
	if err != nil {
		return nil, w.wrong("is not a whole .xlsx workbook: it has no part "+name, w.again)
	}
	return in, nil
}

func (w *Workbook) damaged(part string, err error) error {
	if errors.Is(err, io.EOF) {
		err = errors.New("it ends too early")
	}
	return w.wrong(fmt.Sprintf("is damaged in its part %s: %v", part, err), w.again)
}

func (w *Workbook) wrong(what, do string) error {
	return fail.At(fail.Wrong, fail.Place{File: w.name}, what, do)
}
