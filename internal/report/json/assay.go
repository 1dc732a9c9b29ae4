package jsonreport

import (
	"cmp"
	"io"
	"math"

	"sipsum/internal/assay"
	"sipsum/internal/composition"
	"sipsum/internal/constituent"
	"sipsum/internal/estimate"
	"sipsum/internal/meter"
	"sipsum/internal/note"
	"sipsum/internal/prep"
	"sipsum/internal/reading"
	"sipsum/internal/recipe"
	"sipsum/internal/sheet"
	"sipsum/internal/source"
)

// figure is one result.
type figure struct {
	Mean       number  `json:"mean"`
	SD         number  `json:"sd"`
	Low        number  `json:"low"`
	High       number  `json:"high"`
	Unit       string  `json:"unit"`
	State      string  `json:"state"`
	By         string  `json:"by,omitempty"` // kin: nobody measured its share of a total
	Coverage   number  `json:"coverage"`
	WithBounds number  `json:"with_bounds"`
	UpTo       *number `json:"up_to,omitempty"` // where something is unknown; null if nothing bounds it
}

type unknownFigure struct {
	Mean       *struct{} `json:"mean"` // always null
	Unit       string    `json:"unit"`
	State      string    `json:"state"`
	Coverage   number    `json:"coverage"`
	WithBounds number    `json:"with_bounds"`
	UpTo       number    `json:"up_to"`
}

type table struct {
	ID      string `json:"id"`
	Edition string `json:"edition"`
	Licence string `json:"licence"`
	Hash    string `json:"hash"`
}

type constituents map[constituent.ID]any

type compositionForm struct {
	Constituents constituents `json:"constituents"`
}

type serving struct {
	MassG    number    `json:"mass_g"`
	VolumeMl number    `json:"volume_ml"`
	Mass     interval  `json:"mass"`
	Volume   interval  `json:"volume"`
	Filled   *interval `json:"filled,omitempty"` // with the bubbles of its foams
	compositionForm
	TableEnergy []tableEnergy `json:"table_energy"`
}

// tableEnergy is the energy as the tables print it; missing are the foods that
// bring energy and whose table prints none.
type tableEnergy struct {
	Constituent constituent.ID `json:"constituent"`
	Mean        number         `json:"mean"`
	Unit        string         `json:"unit"`
	Missing     []string       `json:"missing,omitempty"`
}

// interval is a figure that is known wholly.
type interval struct {
	Mean number `json:"mean"`
	SD   number `json:"sd"`
	Low  number `json:"low"`
	High number `json:"high"`
	Unit string `json:"unit"`
	Why  string `json:"why,omitempty"` // withheld: then the figures are null
}

// component is a part of the drink: food names what is poured as it is.
type component struct {
	Name         string         `json:"name"`
	Food         string         `json:"food,omitempty"`
	MassG        number         `json:"mass_g"`
	Constituents constituents   `json:"constituents"`
	Chemistry    *chemistryForm `json:"chemistry,omitempty"`
}

// garnish is a line of the garnish, for all servings together.
type garnish struct {
	Name      string `json:"name"`
	Food      string `json:"food,omitempty"`
	Amount    string `json:"amount"`
	Eaten     bool   `json:"eaten"`
	Nutrition bool   `json:"counts_for_nutrition"`
	Allergens bool   `json:"counts_for_allergens"`
}

type contribution struct {
	Path      []string `json:"path"`
	Food      string   `json:"food"`
	Mean      number   `json:"mean"`
	Share     number   `json:"share"`
	ShareLow  number   `json:"share_low"`
	ShareHigh number   `json:"share_high"`
	State     string   `json:"state"`
	UpTo      *number  `json:"up_to,omitempty"` // unknown: the most it could be; null if nothing is known
	By        string   `json:"by,omitempty"`    // kin or borrowed: nobody measured this food's own
	Why       string   `json:"why,omitempty"`
}

// reading is what an instrument said, what the recipe expects and what is used; expected is
// null where the recipe hardly tells.
type readingForm struct {
	Path     []string `json:"path"`
	Kind     string   `json:"kind"`
	Read     number   `json:"read"`
	Expected number   `json:"expected"`
	Used     number   `json:"used"`
	Unit     string   `json:"unit"`
	Agrees   bool     `json:"agrees"`
	Doubted  bool     `json:"doubted,omitempty"` // what hangs on it spans recipe and reading
	Meter    *byMeter `json:"meter,omitempty"`   // of the shelf
}

// byMeter is the instrument that took a reading, and what it shows too much there.
type byMeter struct {
	Name string `json:"name"`
	Off  number `json:"off"`
	SD   number `json:"sd"`
}

// meterFound is what the pots of a drink tell of an instrument that read several of them.
type meterFound struct {
	Name     string `json:"name"`
	Kind     string `json:"kind"`
	Unit     string `json:"unit"`
	Readings int    `json:"readings"`
	At       number `json:"at"`
	Off      number `json:"off"`
	SD       number `json:"sd"`
	Low      number `json:"low"`
	High     number `json:"high"`
	ByCheck  number `json:"off_by_check"`
	CheckSD  number `json:"sd_by_check"`
}

type noteForm struct {
	Kind        string   `json:"kind"`
	Constituent string   `json:"constituent,omitempty"`
	Foods       []string `json:"foods,omitempty"`
	Text        string   `json:"text"`
}

type drinkHead struct {
	Name   string `json:"name"`
	Serves int    `json:"serves"`
}

// head is what every document about a drink begins with.
type head struct {
	Schema  string    `json:"schema"`
	Program string    `json:"program"`
	File    string    `json:"file,omitempty"` // of a drink among many
	Seed    uint64    `json:"seed"`
	Draws   int       `json:"draws"`
	Proof   string    `json:"proof,omitempty"` // the short digest of its proof pack
	Drink   drinkHead `json:"drink"`
	Tables  []table   `json:"tables"`

	Contradicted []string `json:"contradicted,omitempty"` // readings that contradict their recipe: what hangs on one spans both
}

type assayDocument struct {
	head
	assayBody
	Taste *tasteForm `json:"taste"`
}

type assayBody struct {
	Serving       serving                              `json:"serving"`
	Per100g       compositionForm                      `json:"per_100_g"`
	Per100ml      compositionForm                      `json:"per_100_ml"`
	Readings      []readingForm                        `json:"readings"`
	Meters        []meterFound                         `json:"meters,omitempty"`
	Titrations    []titratedForm                       `json:"titrations,omitempty"`
	Adjusted      []dosedForm                          `json:"adjusted"`
	Chemistry     *chemistryForm                       `json:"chemistry"`
	Minutes       *minutesForm                         `json:"minutes,omitempty"`
	Components    []component                          `json:"components"`
	Garnish       []garnish                            `json:"garnish"`
	Aroma         []aromaForm                          `json:"aroma,omitempty"`
	Foams         []foam                               `json:"foams,omitempty"`
	Contributions map[constituent.ID][]contribution    `json:"contributions"`
	Ingredients   map[constituent.ID][]ingredientShare `json:"ingredients"`
	Notes         []noteForm                           `json:"notes"`
}

// Assay writes sipsum.assay/1.
func Assay(w io.Writer, s *sheet.Sheet) error { return write(w, assayOf(s)) }

// AssayLine writes sipsum.assay/1 of one drink among many: the same on a line, with the file that it is of.
func AssayLine(w io.Writer, s *sheet.Sheet, file string) error {
	document := assayOf(s)
	document.File = file
	return writeLine(w, document)
}

func assayOf(s *sheet.Sheet) assayDocument {
	return assayDocument{headOf("sipsum.assay/1", s), bodyOf(s), tasteOf(sheet.TasteOf(s))}
}

func headOf(schema string, s *sheet.Sheet) head {
	h := head{
		Schema: schema, Program: s.Program, Seed: s.Assay.Seed, Draws: s.Assay.Draws, Proof: s.Proof,
		Drink: drinkHead{s.Assay.Drink.Name, s.Assay.Drink.Serves}, Tables: []table{}, Contradicted: sheet.Contradictions(s),
	}
	for _, t := range s.Tables {
		h.Tables = append(h.Tables, tableOf(t))
	}
	return h
}

func tableOf(t source.Table) table { return table{t.ID, t.Edition, t.Licence, t.Hash} }

func bodyOf(s *sheet.Sheet) assayBody {
	a := s.Assay
	volume := volumeOf(a)
	body := assayBody{
		Serving: serving{
			MassG: number(a.Mass.Mean), VolumeMl: number(volume.Mean),
			Mass: intervalOf(a.Mass), Volume: intervalOf(volume),
			Filled:          filledOf(a),
			compositionForm: compositionForm{constituentsOf(a.PerServing)},
			TableEnergy:     tableEnergiesOf(a),
		},
		Per100g:    compositionForm{constituentsOf(a.Per100g)},
		Per100ml:   compositionForm{constituentsOf(a.Per100ml)},
		Readings:   readingsOf(a.Readings),
		Titrations: titratedOf(s),
		Meters: each(a.Meters, func(f meter.Found) meterFound {
			return meterFound{f.Name, f.Kind, f.Unit, f.Readings, number(f.At), number(f.Is), number(f.IsU), number(f.Low), number(f.High), number(f.Was), number(f.U)}
		}),
		Adjusted:      adjustedOf(a.Adjusted),
		Chemistry:     chemistryOf(a.Chemistry, &a.Density),
		Minutes:       minutesOf(sheet.CourseOf(s)),
		Components:    []component{},
		Garnish:       garnishOf(a.Garnish),
		Aroma:         aromaOf(s),
		Foams:         foamsOf(a),
		Contributions: map[constituent.ID][]contribution{},
		Ingredients:   sharesOf(s),
		Notes:         notesOf(a.Notes),
	}
	body.Chemistry.CurdleMap = curdleMapOf(a.Curdling)
	for _, c := range a.Components {
		each := component{Name: c.Name, Food: foodOf(c.ID), MassG: number(c.Mass.Mean), Constituents: constituentsOf(c.Constituents)}
		if c.Chemistry != nil {
			each.Chemistry = chemistryOf(c.Chemistry, nil)
		}
		body.Components = append(body.Components, each)
	}
	for _, f := range a.PerServing {
		list := make([]contribution, 0, len(f.Contributions))
		for _, c := range f.Contributions {
			list = append(list, contributionOf(c))
		}
		body.Contributions[f.Constituent.ID] = list
	}
	return body
}

// filledOf is what a serving fills with the bubbles of its foams; nil if it has none.
func filledOf(a *assay.Assay) *interval {
	if !sheet.Foamy(a) {
		return nil
	}
	filled := intervalOf(a.Filled)
	return &filled
}

// volumeOf is the volume of a serving; of what is no liquid there is none.
func volumeOf(a *assay.Assay) composition.Result {
	volume := a.Volume
	if sheet.NoLiquid(a) != "" {
		none := math.NaN()
		volume.Summary = estimate.Summary{Mean: none, SD: none, Low: none, High: none}
	}
	return volume
}

// foodOf gives the food of a part; empty if it is a component.
func foodOf(id recipe.PartID) string {
	if id.Component != "" {
		return ""
	}
	return id.Food.String()
}

func garnishOf(lines []recipe.Garnish) []garnish {
	out := make([]garnish, 0, len(lines))
	for _, g := range lines {
		out = append(out, garnish{g.Name, foodOf(g.PartID), g.Amount, g.Eaten, g.Eaten, true})
	}
	return out
}

func tableEnergiesOf(a *assay.Assay) []tableEnergy {
	var list []tableEnergy
	for _, e := range a.TableEnergy {
		list = append(list, tableEnergy{e.ID, number(e.Amount), constituent.Must(e.ID).Unit, e.Missing})
	}
	return list
}

func constituentsOf(c composition.Composition) constituents {
	m := make(constituents, len(c))
	for _, f := range c {
		m[f.Constituent.ID] = figureOf(f.Result)
	}
	return m
}

func figureOf(r composition.Result) any {
	if r.Unknown {
		return unknownFigure{nil, r.Unit, estimate.Unknown.String(), number(r.Coverage), number(r.WithBounds), number(r.UpTo)}
	}
	out := figure{
		number(r.Mean), number(r.SD), number(r.Low), number(r.High), r.Unit, r.State.String(), r.By,
		number(r.Coverage), number(r.WithBounds), nil,
	}
	if r.Partial {
		upTo := number(r.UpTo)
		out.UpTo = &upTo
	}
	return out
}

func intervalOf(r composition.Result) interval {
	return interval{number(r.Mean), number(r.SD), number(r.Low), number(r.High), r.Unit, ""}
}

func contributionOf(c composition.Contribution) contribution {
	out := contribution{
		Path: append([]string{}, c.Path...), Food: c.Food, Mean: number(c.Mean),
		Share: number(c.Share.Mean), ShareLow: number(c.Share.Low), ShareHigh: number(c.Share.High),
		State: c.State.String(), By: c.By, Why: c.SourceNote,
	}
	if c.Unknown {
		bound := number(c.Bound)
		out.UpTo = &bound
	}
	return out
}

func readingsOf(list []reading.Reading) []readingForm {
	out := make([]readingForm, 0, len(list))
	for _, r := range list {
		f := readingForm{append([]string{}, r.Path...), r.Kind, number(r.Read), number(r.Expected), number(r.Used), r.Unit, r.Agrees, r.Doubted, nil}
		if r.By.Meter != "" {
			f.Meter = &byMeter{r.By.Meter, number(r.By.Off), number(r.By.OffU)}
		}
		out = append(out, f)
	}
	return out
}

// dosedForm is a dose that an adjust step calculated, in grams.
type dosedForm struct {
	Step    string `json:"step"`
	With    string `json:"with"`
	Reading string `json:"reading"`
	To      number `json:"to"`
	Unit    string `json:"unit"`
	PotG    number `json:"pot_g"`
	DoseG   number `json:"dose_g"`
	LowG    number `json:"low_g"`
	HighG   number `json:"high_g"`
}

func adjustedOf(list []prep.Dosed) []dosedForm {
	out := make([]dosedForm, 0, len(list))
	for _, d := range list {
		out = append(out, dosedForm{d.Step, d.Name, d.Reading, number(d.To), cmp.Or(d.Unit, "pH"), number(d.Pot), number(d.Grams.Mean), number(d.Grams.Low), number(d.Grams.High)})
	}
	return out
}

func notesOf(list []note.Note) []noteForm {
	out := make([]noteForm, 0, len(list))
	for _, n := range list {
		out = append(out, noteForm{n.Kind, string(n.Constituent), n.Foods, n.Text})
	}
	return out
}
