package jsonreport

import (
	"sipsum/internal/constituent"
	"sipsum/internal/titration"
)

// outlookForm is what a titration that nobody has begun, or a further point of one, would tell.
type outlookForm struct {
	Of    *string       `json:"of"` // null: the finished drink
	Read  int           `json:"points_read"`
	Plan  *planForm     `json:"plan,omitempty"` // of one that nobody has begun
	Acids []suspectForm `json:"acids"`          // in g per 100 g
	Kits  []kitForm     `json:"kits"`
	Few   int           `json:"wants_points,omitempty"` // before they count for the acids
	Next  *additionForm `json:"next"`                   // null: nobody has begun, or no point is worth its base
	Wrong bool          `json:"contradicts,omitempty"`
	Done  bool          `json:"at_its_end"`
	Prove *proofForm    `json:"prove_the_base,omitempty"`
}

type planForm struct {
	SampleG  number `json:"sample_g"`
	Molarity number `json:"base_mol_per_l"`
	Ml       number `json:"ml"`
	EndPH    number `json:"end_ph"`
	Points   int    `json:"points"`
}

type suspectForm struct {
	Constituent constituent.ID `json:"constituent"`
	Recipe      interval       `json:"recipe"`
}

// kitForm is what a kit tells: half of the 90 % interval of each acid, in their order.
type kitForm struct {
	Kit    string     `json:"kit"` // burette, syringe, proved (a syringe and a base that was proved with it) or own
	Half   []number   `json:"half"`
	Joined []pairForm `json:"not_told_apart"`
	Base   number     `json:"base_half"` // of what sample and base are off by, as a share
}

type pairForm struct {
	Constituents []constituent.ID `json:"constituents"`
	Correlation  number           `json:"correlation"`
	SumHalf      number           `json:"sum_half"`
}

type additionForm struct {
	AddMl   number   `json:"add_ml"`
	TotalMl number   `json:"total_ml"`
	PH      number   `json:"ph"`
	Then    []number `json:"then_ml"`
	Narrows number   `json:"narrows"`
}

type proofForm struct {
	Acid     constituent.ID `json:"acid"`
	Share    number         `json:"share"`
	SampleG  number         `json:"sample_g"`
	ProtonMM number         `json:"protons_mmol"`
}

func outlookOf(o titration.Outlook) outlookForm {
	f := outlookForm{Of: named(o.Of), Read: o.Read, Few: o.Few, Wrong: o.Wrong, Done: o.Done}
	if o.Read == 0 {
		f.Plan = &planForm{number(o.Plan.Grams), number(o.Plan.Molarity), number(o.Ml), number(o.Plan.End), o.Plan.Points}
	}
	for _, a := range o.Acids {
		f.Acids = append(f.Acids, suspectForm{a.ID, summaryOf(a.Recipe, gramsPer100g)})
	}
	for _, k := range o.Kits {
		form := kitForm{Kit: k.Name, Base: number(k.Base), Joined: []pairForm{}, Half: each(k.Half, func(x float64) number { return number(x) })}
		if k.Name == "" {
			form.Kit = "own"
		}
		for _, p := range k.Joined {
			form.Joined = append(form.Joined, pairForm{[]constituent.ID{o.Acids[p.First].ID, o.Acids[p.Second].ID}, number(p.Correlation), number(p.Half)})
		}
		f.Kits = append(f.Kits, form)
	}
	if n := o.Next; n != nil {
		f.Next = &additionForm{number(n.Ml), number(n.Total), number(n.PH), each(n.Then, func(x float64) number { return number(x) }), number(n.Narrows)}
	}
	if p := o.Proof; p != nil {
		f.Prove = &proofForm{"CITAC", number(p.Share), number(p.Grams), number(p.Mol * 1000)}
	}
	return f
}

// named gives a component; nil: the finished drink.
func named(component string) *string {
	if component == "" {
		return nil
	}
	return &component
}
