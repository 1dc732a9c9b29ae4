package jsonreport

import (
	"io"

	"sipsum/internal/invent"
	"sipsum/internal/sheet"
)

// inventDocument is sipsum.invent/1.
type inventDocument struct {
	head
	From    []string        `json:"from"`
	Already bool            `json:"met_as_written"`
	Enough  number          `json:"probability_at_least"`
	Whole   bool            `json:"every_set_was_tried"`
	Before  []fitTarget     `json:"as_written"`
	Still   []string        `json:"still_there"`
	Designs []inventDesign  `json:"designs"`
	Unread  []inventUnread  `json:"would_win_if_read"`
	None    []string        `json:"why_none"`
	Refused []inventRefused `json:"left_out_for_what_may_hurt"`
	Foods   inventFoods     `json:"foods"`
	Remarks []string        `json:"remarks"`
	Written string          `json:"written,omitempty"`
}

type inventPart struct {
	Food   string `json:"food"`
	Name   string `json:"name"`
	By     string `json:"preparation"`
	Pours  string `json:"pours"`
	Grams  number `json:"g"`
	Serves int    `json:"for_servings"`
}

type inventDesign struct {
	Line      string          `json:"line"`
	Low       number          `json:"probability_low"`
	High      number          `json:"probability_high"`
	Parts     []inventPart    `json:"parts"`
	Targets   []fitTarget     `json:"targets"`
	Weakest   *inventWeakest  `json:"weakest"`
	Allergens []string        `json:"allergens"`
	Cautions  []inventCaution `json:"cautions"`
	Then      []string        `json:"a_serving_then"`
	Doses     []inventCaution `json:"cautions_in_other_figures"`
}

type inventWeakest struct {
	Target string `json:"target"`
	Food   string `json:"food,omitempty"` // empty: the drink as it is written
	Says   string `json:"says"`
	Share  number `json:"share_of_variance"`
}

type inventCaution struct {
	Code string `json:"code"`
	Rank int    `json:"rank"`
	Text string `json:"text"`
}

type inventUnread struct {
	Food   string   `json:"food"`
	Name   string   `json:"name"`
	By     string   `json:"preparation"`
	Grams  number   `json:"g_of_a_serving"`
	Target string   `json:"target"`
	Least  number   `json:"at_least_in_100_g"`
	Unit   string   `json:"unit,omitempty"`
	Share  number   `json:"share_of_the_most"`
	Settle *saidGap `json:"settle"`
}

type inventRefused struct {
	Parts   []inventPart  `json:"parts"`
	Caution inventCaution `json:"caution"`
}

type inventFoods struct {
	All         int `json:"of_the_tables"`
	Tried       int `json:"tried"`
	Unpoured    int `json:"nobody_pours"`
	Unwanted    int `json:"not_wanted"`
	NotAssessed int `json:"not_assessed"`
	Alcohol     int `json:"alcohol"`
	Salty       int `json:"sodium"`
	Unmade      int `json:"cannot_be_prepared"`
}

// Invented writes sipsum.invent/1.
func Invented(w io.Writer, v *sheet.Invented) error {
	p := v.Passed
	parts := func(list []invent.Part) []inventPart {
		return each(list, func(x invent.Part) inventPart {
			return inventPart{x.Food.ID.String(), x.Food.Name(), x.By.Name, x.Name, number(x.Pour.Base()), v.Assay.Drink.Serves}
		})
	}
	d := inventDocument{
		head: headOf("sipsum.invent/1", v.Sheet), From: listed(v.From), Already: v.Already, Enough: number(v.Enough), Whole: v.Whole,
		Before: each(v.Before.Held, targetBody), Still: listed(v.Still), Designs: []inventDesign{},
		Unread: each(v.Unread, unreadBody), None: []string{}, Remarks: listed(v.Remarks()), Written: v.Written,
		Refused: each(v.Refused, func(r invent.Refused) inventRefused {
			return inventRefused{parts(r.Parts), inventCaution{r.Why.Code, r.Why.Rank, r.Why.Text}}
		}),
		Foods: inventFoods{p.Foods, p.Tried, p.Unpoured, p.Unwanted, p.NotAssessed, p.Alcohol, p.Salty, p.Unmade},
	}
	if len(v.Designs) == 0 && !v.Already {
		d.None = listed(v.WhyNone())
	}
	for n, x := range v.Designs {
		body := inventDesign{
			Line: v.DesignLine(n), Low: number(x.Sure), High: number(x.May), Parts: parts(x.Parts), Targets: each(x.Held, targetBody),
			Allergens: listed(v.DesignAllergens(n)), Cautions: []inventCaution{},
			Then: listed(v.ServingThen(n)), Doses: each(v.Doses(n), func(c sheet.Cautioned) inventCaution { return inventCaution{c.Code, c.Rank, c.Text} }),
		}
		for _, c := range x.Cautions {
			body.Cautions = append(body.Cautions, inventCaution{c.Code, c.Rank, c.Text})
		}
		if weak := x.Weakest; weak != nil {
			body.Weakest = &inventWeakest{Target: weak.Target, Says: v.WeakestSaid(n), Share: number(weak.Share)}
			if weak.Of != nil {
				body.Weakest.Food = weak.Of.ID.String()
			}
		}
		d.Designs = append(d.Designs, body)
	}
	return write(w, d)
}

func unreadBody(u invent.Unread) inventUnread {
	b := inventUnread{
		Food: u.Food.ID.String(), Name: u.Food.Name(), By: u.By.Name, Grams: number(u.Grams), Target: u.Target,
		Least: number(u.Least), Share: number(u.Share), Settle: gapBody(&u.Gap),
	}
	if u.Of != nil {
		b.Unit = u.Of.Unit
	}
	return b
}
