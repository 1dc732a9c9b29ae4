package jsonreport

import (
	"io"

	"sipsum/internal/batch"
	"sipsum/internal/sheet"
)

type homeBody struct {
	Serves  int           `json:"serves"`
	Written string        `json:"written,omitempty"` // the file that holds it
	Stands  []stoodOf     `json:"stands_in"`
	Unread  []string      `json:"readings_left_out"` // pots; "" is the drink
	Lines   []spoonedOf   `json:"lines"`
	Figures []shiftOf     `json:"figures"`
	Bands   []bandOf      `json:"bands"`
	Left    []string      `json:"bands_left"`
	Untold  []string      `json:"bands_untold"` // tastes of which nobody can say whether they stay
	Same    bool          `json:"same"`         // within all bands, measured as written
	Inside  number        `json:"inside"`       // share of the servings, spoons filled as hands fill them; null: there is no band
	First   string        `json:"first,omitempty"`
	Contain []string      `json:"contains"`
	May     []string      `json:"may_contain"`
	Check   []string      `json:"check"` // what somebody has to find out
	Caution []cautionedOf `json:"cautions"`
}

type stoodOf struct {
	Path   string `json:"path"`
	From   string `json:"from"`
	To     string `json:"to"` // "": nothing does
	Fitted bool   `json:"fitted"`
	Why    string `json:"why,omitempty"`
	Source string `json:"source"`
	Text   string `json:"text"`
}

type spoonedOf struct {
	Path   string `json:"path"`
	Pot    string `json:"pot"` // "": the drink
	Name   string `json:"name"`
	Times  number `json:"times"` // how often it is measured: in each brew; all that follows is of one
	Exact  number `json:"exact_g"`
	Grams  number `json:"grams"`
	Amount string `json:"amount"`
	Weigh  bool   `json:"weigh"`
	Why    string `json:"why,omitempty"`
	Step   bool   `json:"step,omitempty"`    // an amount of a step
	Top    bool   `json:"garnish,omitempty"` // on top
	Scale  string `json:"on_a_scale,omitempty"`
	Text   string `json:"text,omitempty"` // why it is weighed
}

type shiftOf struct {
	Name   string `json:"name"`
	Before any    `json:"before"`
	Home   any    `json:"home"`
	Moved  bool   `json:"moved"`
}

// Home writes sipsum.home/1: the home version of a drink, on its own sheet, beside that of the drink as
// it is written.
func Home(w io.Writer, was, s *sheet.Sheet, h *batch.Home, shifts []batch.Shift, written string) error {
	told := sheet.DeclaredBy(s)
	body := homeBody{
		Serves: h.Serves, Written: written, Unread: each(h.Unread, itself), Left: each(h.Left, itself), Untold: each(h.Untold, itself), Same: len(h.Bands) > 0 && len(h.Left) == 0 && len(h.Untold) == 0,
		Stands: each(h.Stands, func(x batch.Stood) stoodOf {
			return stoodOf{x.Path, x.From, x.To, x.Fitted, x.Why, x.Source, sheet.StandText(s, x)}
		}),
		Lines: each(h.Lines, func(x batch.Spooned) spoonedOf {
			return spoonedOf{x.Path, x.Pot, x.Name, number(x.Times), number(x.Exact), number(x.Grams), sheet.HomeText(x), x.Weigh != "", x.Weigh, x.Step, x.Garnish, onScale(x), sheet.WeighText(h, x)}
		}),
		Figures: each(shifts, func(x batch.Shift) shiftOf {
			return shiftOf{sheet.ShiftName(x), figureOf(x.Before), figureOf(x.Home), sheet.ShiftMoved(x)}
		}),
		Bands:  each(h.Bands, func(x batch.Band) bandOf { return bandOf{x.Name, number(x.Share), x.Source} }),
		Inside: number(h.Inside), First: h.First, Contain: each(told.Contains, itself), Caution: warnings(s),
		May: each(told.MayContain, itself), Check: each(told.Check, itself),
	}
	top := headOf("sipsum.home/1", s)
	top.Contradicted = sheet.Contradictions(was) // no reading is left at home
	return write(w, struct {
		head
		homeBody
	}{top, body})
}

func onScale(x batch.Spooned) string {
	if x.Weigh == "" {
		return ""
	}
	return x.Scale.String()
}

// containing lists what is declared, each name once.
func containing(s *sheet.Sheet) []string {
	names, seen := []string{}, map[string]bool{}
	for _, d := range s.Allergens() {
		for _, e := range d.Contains {
			if !seen[e.Name] {
				seen[e.Name] = true
				names = append(names, e.Name)
			}
		}
	}
	return names
}

func warnings(s *sheet.Sheet) []cautionedOf {
	return each(s.Cautions(), func(c sheet.Cautioned) cautionedOf { return cautionedOf{c.Code, c.Text, c.Source} })
}
