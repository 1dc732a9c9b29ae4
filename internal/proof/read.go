package proof

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"sync"

	"sipsum/internal/constituent"
	"sipsum/internal/embedded"
	"sipsum/internal/estimate"
	"sipsum/internal/fail"
	"sipsum/internal/food"
)

// Opened is a pack as it was read, and what speaks against its being the one that was written.
type Opened struct {
	*Pack
	Text   []byte   // of the pack
	Page   bool     // it stands in a page
	Broken []string // empty: the file is as it was sealed
}

// MostBytes is the longest file that is read.
var MostBytes = sync.OnceValue(func() int {
	for _, row := range embedded.Rows("size_limits.csv") {
		if row.Text("limit") == "proof pack" {
			return row.Whole("value")
		}
	}
	panic("proof: size_limits.csv has no limit of a proof pack")
})

// Read reads a pack, or the page that one stands in. The error says why nothing of it can be checked.
func Read(file []byte) (*Opened, error) {
	if len(file) > MostBytes() {
		return nil, fail.New(fail.Wrong, fmt.Sprintf("the file has more than %d bytes, which no proof pack has", MostBytes()), "give a file that sipsum prove wrote")
	}
	o := &Opened{Text: file}
	if _, behind, found := bytes.Cut(file, []byte(BlockBegins)); found {
		o.Page = true
		o.Text, _, _ = bytes.Cut(behind, []byte(BlockEnds))
		if !ofPage.holds(file) {
			o.Broken = append(o.Broken, "the page is not as it was written: its seal does not fit")
		}
	}
	if !ofPack.holds(o.Text) {
		o.Broken = append(o.Broken, "the pack is not as it was written: its seal does not fit")
	}
	p, err := decode(o.Text)
	if err != nil {
		return nil, unreadable(o.Broken, err)
	}
	o.Pack = p
	if len(o.Broken) == 0 && !bytes.Equal(p.Encode(), o.Text) {
		o.Broken = append(o.Broken, "the pack is not written as sipsum writes one")
	}
	o.Broken = append(o.Broken, p.contradictions()...)
	return o, nil
}

// unreadable is the error of a pack of which nothing can be checked.
func unreadable(broken []string, err error) error {
	e := fail.Because(fail.Failed, err, "it cannot be read as a proof pack", "ask for the file again, or write one: sipsum prove DRINK -o FILE.html")
	for _, text := range broken {
		e.Faults = append(e.Faults, fail.Fault{What: text})
	}
	return e
}

func decode(text []byte) (*Pack, error) {
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	p := &Pack{}
	if err := d.Decode(p); err != nil {
		return nil, err
	}
	if _, err := d.Token(); err != io.EOF {
		return nil, fmt.Errorf("there is more behind it")
	}
	if p.Schema != Schema {
		return nil, fmt.Errorf("its form is %q, and this program reads %s", p.Schema, Schema)
	}
	return p, p.check()
}

// check refuses what no program could have written: of such a pack nothing is calculated.
func (p *Pack) check() error {
	if len(p.Files) == 0 {
		return fmt.Errorf("it holds no drink file")
	}
	seen := map[string]bool{}
	for i := range p.Rows {
		r := &p.Rows[i]
		if _, coded := food.ParseID(r.Food); !coded || seen[r.Food] {
			return fmt.Errorf("%q is no row, or stands there twice", r.Food)
		}
		seen[r.Food] = true
		if err := r.check(); err != nil {
			return fmt.Errorf("row %s: %w", r.Food, err)
		}
	}
	return nil
}

// check refuses what no row of a table is.
func (r *Row) check() error {
	switch {
	case r.Says == nil && r.Withheld == "":
		return fmt.Errorf("it says nothing")
	case r.Says == nil:
		return nil
	}
	seen := map[string]bool{}
	for _, v := range r.Says.Values {
		_, err := estimate.ParseState(v.State)
		_, known := constituent.Find(v.Of)
		switch {
		case err != nil:
			return fmt.Errorf("%s: %w", v.Of, err)
		case !known && !strings.Contains(v.Of, ":"):
			return fmt.Errorf("there is no constituent %q", v.Of)
		case seen[v.Of]:
			return fmt.Errorf("%s stands there twice", v.Of)
		}
		seen[v.Of] = true
		for _, x := range []*float64{v.Amount, v.SD, v.Low, v.High, v.Most} {
			if x != nil && *x < 0 && !mayBeLess(v.Of) {
				return fmt.Errorf("%s is less than nothing", v.Of)
			}
		}
	}
	return r.Says.bulk()
}

// mayBeLess reports whether a figure may lie below zero: a column of the table's own, of which nothing is known.
func mayBeLess(tag string) bool { return strings.Contains(tag, ":") }

// bulk refuses a density, an edible share or a portion that nothing has.
func (p *Published) bulk() error {
	d := p.Density
	switch {
	case d != nil && d.GramsPerMl != nil && !(*d.GramsPerMl > 0):
		return fmt.Errorf("it has no density")
	case p.Edible != nil && !(*p.Edible > 0 && *p.Edible <= 1):
		return fmt.Errorf("its edible share is none")
	}
	for _, x := range p.Portions {
		if x.Grams != nil && !(*x.Grams > 0) {
			return fmt.Errorf("a portion of it weighs nothing")
		}
	}
	return nil
}

// contradictions are what a pack says of itself and what does not agree.
func (p *Pack) contradictions() []string {
	var list []string
	for i := range p.Rows {
		r := &p.Rows[i]
		if r.Says != nil && r.Says.Digest() != r.Digest {
			list = append(list, "the row "+r.Food+" is not the one of its digest")
		}
		if r.Says != nil && published(r.food()).Digest() != r.Says.Digest() {
			list = append(list, "the row "+r.Food+" states a unit that is not that of its figures")
		}
	}
	for _, c := range p.Constants {
		if c.Text != "" && TextDigest(c.Text) != c.Digest {
			list = append(list, c.File+" is not the one of its digest")
		}
	}
	if p.Inputs.Short(p.Program) != p.Short {
		list = append(list, "the pack is not that of its short digest "+note(p.Short))
	}
	return list
}

// note quotes a text of a stranger, no longer than a digest.
func note(text string) string {
	if r := []rune(text); len(r) > digits {
		text = string(r[:digits])
	}
	return fmt.Sprintf("%q", text)
}
