package jsonreport

import (
	"io"

	"sipsum/internal/across"
	"sipsum/internal/constituent"
)

type acrossTaken struct {
	Core   string `json:"core"`
	Row    string `json:"row"`
	Match  string `json:"match"`
	Reason string `json:"reason,omitempty"`
	Origin bool   `json:"core_is_made_from_it"`
}

type acrossStay struct {
	Food string `json:"food"`
	Why  string `json:"why,omitempty"`
}

type acrossTable struct {
	Table string        `json:"table"`
	Of    string        `json:"format"`
	Was   string        `json:"edition"`
	Made  bool          `json:"made"`
	Why   string        `json:"why,omitempty"`
	Taken []acrossTaken `json:"taken"`
	Stays []acrossStay  `json:"not_in_it"`
}

type acrossVoice struct {
	Table    string          `json:"table"`
	Standing across.Standing `json:"standing"`
	Value    any             `json:"value"` // null: not in this table, or not made by it
	Lacks    []string        `json:"lacks,omitempty"`
	Own      number          `json:"own_share"` // that its rows bring; the rest stands as core has it
}

type acrossMost struct {
	Food        string         `json:"food"`
	Constituent constituent.ID `json:"constituent"`
	Low         number         `json:"low"`
	LowBy       string         `json:"low_by"`
	High        number         `json:"high"`
	HighBy      string         `json:"high_by"`
	Share       number         `json:"share_of_serving"`
}

type acrossFigure struct {
	Core   any           `json:"core"`
	Tables int           `json:"tables"` // that tell it
	Speak  int           `json:"tables_mostly_own"`
	Unlike bool          `json:"defined_unlike"` // tables may differ by nothing but what they mean by it
	Low    number        `json:"low"`
	High   number        `json:"high"`
	Beyond bool          `json:"beyond_interval"`
	Most   *acrossMost   `json:"most,omitempty"`
	By     []acrossVoice `json:"by"`
}

type acrossUnlike struct {
	Constituent constituent.ID `json:"constituent"`
	Format      string         `json:"format,omitempty"` // none: of every table
	Converted   bool           `json:"converted"`
	Text        string         `json:"text"`
	Source      string         `json:"source"`
}

// Across writes sipsum.across/1.
func Across(w io.Writer, program string, a *across.Across) error {
	figures := map[constituent.ID]acrossFigure{}
	for _, f := range a.Figures {
		figures[f.Constituent.ID] = acrossFigure{
			figureOf(f.Core), f.Tables, f.Speak, a.Marked(f), number(f.Low), number(f.High), f.Tables > 0 && f.Beyond(), acrossMostOf(f.Most), each(f.Voices, acrossVoiceOf),
		}
	}
	return write(w, struct {
		Schema  string                          `json:"schema"`
		Program string                          `json:"program"`
		Seed    uint64                          `json:"seed"`
		Draws   int                             `json:"draws"`
		Name    string                          `json:"name"`
		File    string                          `json:"file"`
		Tables  []acrossTable                   `json:"tables"`
		Most    *acrossMost                     `json:"most"`
		Figures map[constituent.ID]acrossFigure `json:"constituents"`
		Unlike  []acrossUnlike                  `json:"definitions"`
	}{
		"sipsum.across/1", program, a.Core.Seed, a.Core.Draws, a.Core.Drink.Name, a.Core.Drink.File, each(a.Tables, acrossTableOf), acrossMostOf(a.Most), figures,
		each(a.Unlike, func(u across.Unlike) acrossUnlike {
			return acrossUnlike{u.Constituent.ID, u.Table, u.Converted, u.Says, u.Source}
		}),
	})
}

func acrossTableOf(t across.Table) acrossTable {
	return acrossTable{
		t.ID, t.Format, t.Edition, t.Assay != nil, t.Why,
		each(t.Taken, func(x across.Taken) acrossTaken {
			return acrossTaken{x.Core.ID.String(), x.By.ID.String(), x.Grade, x.Reason, x.Origin}
		}),
		each(t.Stays, func(x across.Stay) acrossStay { return acrossStay{x.Food.ID.String(), x.Why} }),
	}
}

func acrossVoiceOf(v across.Voice) acrossVoice {
	out := acrossVoice{Table: v.Table, Standing: v.Standing, Lacks: foodIDs(v.Lacks), Own: number(v.Own)}
	if v.Standing != across.Absent && v.Standing != across.Unmade {
		out.Value = figureOf(v.Result)
	}
	return out
}

func acrossMostOf(d *across.Disagreement) *acrossMost {
	if d == nil {
		return nil
	}
	return &acrossMost{d.Food.ID.String(), d.Constituent.ID, number(d.Low), d.LowBy, number(d.High), d.HighBy, number(d.Share)}
}
