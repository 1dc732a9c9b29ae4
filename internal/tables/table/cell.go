package table

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strconv"
	"strings"
)

// readTexts reads the shared strings, of which cells give the number.
func (w *Workbook) readTexts(part string) error {
	in, err := w.part(part)
	if err != nil {
		return err
	}
	defer in.Close()
	d := xml.NewDecoder(&shortTexts{Reader: in})
	for {
		token, err := d.Token()
		if err == io.EOF {
			return nil
		} else if err != nil {
			return w.damaged(part, err)
		}
		if start, ok := token.(xml.StartElement); !ok || start.Name.Local != "si" {
			continue
		}
		var text strings.Builder
		if err := richText(d, &text); err != nil {
			return w.damaged(part, err)
		}
		w.texts = append(w.texts, unescape(text.String()))
	}
}

// general is the number format of a cell without one.
const general = "General"

// readFormats reads the number format of each cell style. The formats that every
// spreadsheet knows by number are not spelled out in a file; they are General
// here.
func (w *Workbook) readFormats(part string) error {
	var styles struct {
		Formats []struct {
			ID   string `xml:"numFmtId,attr"`
			Code string `xml:"formatCode,attr"`
		} `xml:"numFmts>numFmt"`
		Cells []struct {
			Format string `xml:"numFmtId,attr"`
		} `xml:"cellXfs>xf"`
	}
	if err := w.decode(part, &styles); err != nil {
		return err
	}
	codes := map[string]string{}
	for _, f := range styles.Formats {
		codes[f.ID] = f.Code
	}
	for _, c := range styles.Cells {
		code, own := codes[c.Format]
		if !own {
			code = general
		}
		w.formats = append(w.formats, code)
	}
	return nil
}

// errLong is the error of a part with a text beyond all measure.
var errLong = errors.New("a text or tag in it is too long")

// maxText is the longest text between two tags, in bytes: a full cell of
// characters that are all written as references.
const maxText = 1 << 20

// shortTexts refuses a text beyond all measure before it fills the memory.
type shortTexts struct {
	io.Reader
	since int // bytes since the last tag began
}

func (s *shortTexts) Read(p []byte) (int, error) {
	n, err := s.Reader.Read(p[:min(len(p), maxText)])
	if at := bytes.LastIndexByte(p[:n], '<'); at >= 0 {
		s.since = n - at
	} else {
		s.since += n
	}
	if s.since > maxText {
		return 0, errLong
	}
	return n, err
}

// richText reads the texts of an element up to its end: its own, and those of
// its runs, but not the phonetic ones that tell how to pronounce them.
func richText(d *xml.Decoder, into *strings.Builder) error {
	for {
		token, err := d.Token()
		if err != nil {
			return err
		}
		switch e := token.(type) {
		case xml.StartElement:
			switch e.Name.Local {
			case "t":
				err = characters(d, into)
			case "r":
				err = richText(d, into)
			default:
				err = d.Skip()
			}
			if err != nil {
				return err
			}
		case xml.EndElement:
			return nil
		}
	}
}

// characters reads the text of an element up to its end.
func characters(d *xml.Decoder, into *strings.Builder) error {
	for {
		token, err := d.Token()
		if err != nil {
			return err
		}
		switch e := token.(type) {
		case xml.CharData:
			into.Write(e)
		case xml.StartElement:
			if err := d.Skip(); err != nil {
				return err
			}
		case xml.EndElement:
			return nil
		}
	}
}

// unescape undoes _x000D_, the way in which the format writes characters that
// XML cannot hold (ECMA-376 part 1, ST_Xstring).
func unescape(text string) string {
	if !strings.Contains(text, "_x") {
		return text
	}
	var out strings.Builder
	for {
		at := strings.Index(text, "_x")
		if at < 0 || len(text) < at+7 {
			return out.String() + text
		}
		code, err := strconv.ParseUint(text[at+2:at+6], 16, 16)
		if err != nil || text[at+6] != '_' {
			out.WriteString(text[:at+2])
			text = text[at+2:]
			continue
		}
		out.WriteString(text[:at])
		out.WriteRune(rune(code))
		text = text[at+7:]
	}
}

// attribute gives an attribute of an element; empty if it has none.
func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name && a.Name.Space == "" {
			return a.Value
		}
	}
	return ""
}

// columnOf gives the column of a cell name such as "BA12", counted from 1; 0 if
// it is none.
func columnOf(cell string) int {
	column := 0
	for i := 0; i < len(cell) && i < 4; i++ {
		letter := cell[i] | 0x20
		if letter < 'a' || letter > 'z' {
			break
		}
		column = column*26 + int(letter-'a') + 1
	}
	return column
}

// cellName gives the name of a cell; column counts from 0.
func cellName(row, column int) string {
	letters := ""
	for column++; column > 0; column = (column - 1) / 26 {
		letters = string(rune('A'+(column-1)%26)) + letters
	}
	return letters + strconv.Itoa(row)
}
