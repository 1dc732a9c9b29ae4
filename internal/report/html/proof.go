package htmlreport

import (
	"bytes"
	_ "embed"
	"html/template"
	"io"
	"regexp"
	"strings"
	"sync"

	"sipsum/internal/proof"
	"sipsum/internal/sheet"
)

//go:embed proof.html
var proofFile string

//go:embed proof.css
var proofStyle string

// proofPage is read when the first pack is printed.
var proofPage = sync.OnceValue(func() *template.Template {
	t := template.New("proof").Funcs(template.FuncMap{
		"anchor": anchor,
		"lines":  func(text string) []string { return strings.Split(strings.TrimSuffix(text, "\n"), "\n") },
	})
	return template.Must(t.Parse(proofFile))
})

// Proof prints a proof pack as one page: its figures, each with what brings it down to the row of the table,
// the drink file, the rows, and the pack itself as a block of data at its end. The page is sealed.
func Proof(w io.Writer, p *proof.Pack) error {
	var out bytes.Buffer
	err := proofPage().Execute(&out, struct {
		*provenPage
		Style template.CSS
	}{pageOf(p), template.CSS(styleFile + sheetStyle + proofStyle)})
	if err != nil {
		return err
	}
	out.WriteString(proof.BlockBegins)
	out.Write(p.Encode())
	out.WriteString(proof.BlockEnds + "\n</body>\n</html>\n")
	_, err = w.Write(proof.SealPage(out.Bytes()))
	return err
}

// provenPage is a pack as its page shows it.
type provenPage struct {
	*proof.Pack
	Language string
	Sections []provenSection
	Rows     []provenRow
}

// provenSection is the figures of one part of the drink.
type provenSection struct {
	Name    string
	Figures []provenFigure
}

// provenFigure is a figure with its derivation.
type provenFigure struct {
	*proof.Figure
	Pots []provenPot
}

// provenPot is what comes through one pot.
type provenPot struct {
	Name  string // of the pots, outer ones first; empty: poured as it is
	Parts []provenPart
}

// provenPart is what one food brings, and what its row says.
type provenPart struct {
	*proof.Part
	Row    string // of which the values are; empty: the pack holds none
	Values []proof.Value
}

// provenRow is a row with how it is named in the page.
type provenRow struct {
	*proof.Row
	Name string
}

func pageOf(p *proof.Pack) *provenPage {
	page := &provenPage{Pack: p, Language: sheet.English}
	rows := map[string]*proof.Row{}
	for i := range p.Inputs.Rows {
		r := &p.Inputs.Rows[i]
		rows[r.Food] = r
		name := r.Food
		if r.Says != nil && len(r.Says.Names) > 0 {
			name = r.Says.Names[0].Text
		}
		page.Rows = append(page.Rows, provenRow{r, name})
	}
	for i := range p.Figures {
		f := &p.Figures[i]
		if n := len(page.Sections); n == 0 || page.Sections[n-1].Name != f.In {
			page.Sections = append(page.Sections, provenSection{Name: f.In})
		}
		s := &page.Sections[len(page.Sections)-1]
		s.Figures = append(s.Figures, provenFigure{f, potsOf(f, rows)})
	}
	return page
}

// potsOf sorts the parts of a figure by the pots they come through.
func potsOf(f *proof.Figure, rows map[string]*proof.Row) []provenPot {
	var pots []provenPot
	at := map[string]int{}
	for i := range f.Parts {
		part := &f.Parts[i]
		name := strings.Join(part.Through, " › ")
		if _, seen := at[name]; !seen {
			at[name] = len(pots)
			pots = append(pots, provenPot{Name: name})
		}
		pot := &pots[at[name]]
		pot.Parts = append(pot.Parts, partOf(part, rows))
	}
	return pots
}

func partOf(part *proof.Part, rows map[string]*proof.Row) provenPart {
	out := provenPart{Part: part}
	id := part.Food
	if part.Lender != "" {
		id = part.Lender
	}
	r := rows[id]
	if r == nil {
		return out
	}
	out.Row = id
	if r.Says == nil {
		return out
	}
	for _, tag := range part.Tags {
		if v, ok := r.Says.Find(tag); ok {
			out.Values = append(out.Values, v)
		}
	}
	return out
}

var noAnchor = regexp.MustCompile(`[^A-Za-z0-9_.-]+`)

// anchor is the name of a row within the page.
func anchor(food string) string { return "row-" + noAnchor.ReplaceAllString(food, "-") }
