package web

import (
	"bytes"
	"encoding/json"
	"errors"
	"html/template"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"sipsum/internal/bench"
	"sipsum/internal/benchlog"
	"sipsum/internal/drink"
	"sipsum/internal/fail"
	"sipsum/internal/rewrite"
	"sipsum/internal/workshop"
)

// edit changes the text of a drink as a form asks, and shows the drink as it then is: the page whole, or for a
// script its pieces. A change that cannot be made leaves the text as it was, and says why.
func (s *Server) edit(w http.ResponseWriter, r *http.Request) {
	saved, ok := s.opened(w, r)
	if !ok {
		return
	}
	if err := r.ParseForm(); err != nil {
		fails(w, fail.New(fail.Wrong, "this form cannot be read", "go back, and send it again"))
		return
	}
	text, base := endedAs(saved.Text, typed(r)), r.PostForm.Get("base")
	if !r.PostForm.Has("text") { // a form of a page that knows no more of the drink than its name
		text, base = saved.Text, workshop.Fingerprint(saved.Text)
	}
	next, wrong := s.changed(rewrite.Text{Name: saved.Name, Bytes: text, Open: s.folder.Beside}, r.PostForm)
	var told *fail.Error
	if wrong != nil && !errors.As(wrong, &told) {
		fails(w, wrong)
		return
	}
	page, err := s.benchOf(r.Context(), File{saved.Name, next}, saved.Text, base)
	if err != nil {
		fails(w, err)
		return
	}
	if told != nil {
		page.Told = told.Faults
	}
	if r.Header.Get(pieceHeader) != "" {
		page.pieces(w)
		return
	}
	show(w, http.StatusOK, "bench", page)
}

// The names of fields that carry what they were: an amount as it was written and its path, a reading and its
// pot. So a form that is sent whole says what was changed in it.
const (
	setField  = "set|"  // set|60.0 g|PATH
	readField = "read|" // read|brix|14.8|POT
)

// changed makes the changes of a form: first the fields that no longer say what they said, then what its button or its op
// asks. It gives the text as far as all of them could be made.
func (s *Server) changed(t rewrite.Text, form url.Values) ([]byte, error) {
	was := t.Bytes
	var lines []benchlog.Line
	for _, name := range sortedNames(form) {
		value := strings.TrimSpace(form.Get(name))
		var err error
		if rest, is := strings.CutPrefix(name, setField); is {
			before, path, _ := strings.Cut(rest, "|")
			if value == before {
				continue
			}
			t.Bytes, err = t.Set(path, value)
		} else if rest, is := strings.CutPrefix(name, readField); is {
			kind, rest, _ := strings.Cut(rest, "|")
			before, pot, _ := strings.Cut(rest, "|")
			if value == before || value == "" {
				continue
			}
			if slices.Contains(form[logField], pot) {
				lines, err = withLine(lines, form, pot, kind, value)
			} else {
				t.Bytes, err = t.Measured(potOf(pot), kind, value)
			}
		}
		if err != nil {
			return was, err
		}
	}
	next, err := s.asked(t, form)
	if err == nil && len(lines) > 0 {
		err = writeDown(s.folder, t, lines)
	}
	if err != nil {
		return was, err
	}
	return next, nil
}

// sortedNames are the names of a form in an order that is always the same.
func sortedNames(form url.Values) []string {
	names := make([]string, 0, len(form))
	for name := range form {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// asked makes the one change that a form asks for by its op, or by the button that was pressed.
func (s *Server) asked(t rewrite.Text, form url.Values) ([]byte, error) {
	if step := form.Get("step"); step != "" {
		by, path, _ := strings.Cut(step, " ")
		return turned(t, path, by)
	}
	switch op := form.Get("op"); op {
	case "":
		return t.Bytes, nil
	case "set":
		return t.Set(form.Get("path"), form.Get("amount"))
	case "add":
		return t.Add(form.Get("to"), form.Get("line"))
	case "remove":
		return t.Remove(form.Get("path"))
	case "claim":
		return t.Claim(form.Get("say"), form.Get("check"))
	case "measured":
		return t.Measured(potOf(form.Get("component")), form.Get("reading"), form.Get("value"))
	case "write":
		var list []rewrite.Change
		for _, line := range form["line"] {
			i := strings.LastIndex(line, "=")
			if i < 0 {
				return nil, fail.New(fail.Wrong, "this change names no amount", "write the amounts by hand")
			}
			list = append(list, rewrite.Change{Path: line[:i], Amount: line[i+1:]})
		}
		return t.Write(list)
	}
	return nil, fail.New(fail.Wrong, "this form asks for nothing that can be done", "open the drink again")
}

// potOf names a pot as a reading is written: the build is the drink itself.
func potOf(name string) string {
	if name == rewrite.Build {
		return ""
	}
	return name
}

// mostSteps is how far one press turns a dial.
const mostSteps = 100

// turned turns the dial of an amount by so many steps.
func turned(t rewrite.Text, path, by string) ([]byte, error) {
	n, err := strconv.Atoi(by)
	if err != nil || n < -mostSteps || n > mostSteps {
		return nil, fail.New(fail.Wrong, "this button turns nothing", "open the drink again")
	}
	d, _ := drink.Parse(t.Name, t.Bytes, t.Open)
	to, err := bench.Turn(d, path, float64(n))
	if err != nil {
		return nil, err
	}
	return t.Set(path, to)
}

// reply is what a script is answered.
type reply struct {
	Text   string            `json:"text"`
	Pieces map[string]string `json:"pieces"` // by the id of what they stand in
	Faults []replyFault      `json:"faults"`
}

type replyFault struct {
	Line int    `json:"line"`
	Col  int    `json:"col"`
	What string `json:"what"`
	Do   string `json:"do"`
}

// benchPieces are the parts of the page that change, each the template "bench-" and its name.
var benchPieces = []string{"state", "pots", "faults", "heard"}

// pieces answers a script. Where a text has faults the figures that were there stay.
func (p *benchPage) pieces(w http.ResponseWriter) {
	out := reply{Text: p.Text, Pieces: map[string]string{}, Faults: []replyFault{}}
	names := benchPieces
	if p.Live() {
		names = append(slices.Clone(names), "brief")
	}
	for _, name := range names {
		var b bytes.Buffer
		if err := pages().ExecuteTemplate(&b, "bench-"+name, p); err != nil {
			fails(w, err)
			return
		}
		out.Pieces[name] = b.String()
	}
	for _, f := range p.Faults {
		out.Faults = append(out.Faults, replyFault{f.Number, f.Col, f.What, f.Do})
	}
	w.Header().Set("Content-Type", "application/json")
	_ = json.NewEncoder(w).Encode(out) // somebody who has left needs no words
}

// drawn marks what svgreport has drawn, which escapes what it is given.
func drawn(text string) template.HTML { return template.HTML(text) }
