package jsonreport

import (
	"sipsum/internal/chemistry"
)

// keeping is how a house-made component keeps: its water activity at 25 °C and where
// ice begins to form, and, if the file says that it is kept, what the Food Code's
// interaction table says of it at its highest pH (null: no meter has read it, and the
// worst is taken) and water activity.
type keeping struct {
	WaterActivity estimated `json:"water_activity"`
	FreezingC     estimated `json:"freezing_c"`
	FromMemory    bool      `json:"from_memory,omitempty"`
	Holding       *holding  `json:"holding,omitempty"`
}

type holding struct {
	Days            number  `json:"days"`
	AtC             *number `json:"at_c,omitempty"`
	PHUpTo          number  `json:"ph_up_to"`
	ActivityUpTo    number  `json:"water_activity_up_to"`
	MilkOrEgg       bool    `json:"milk_or_egg"`
	NeedsAssessment bool    `json:"needs_assessment"`
	Source          string  `json:"source"`
}

func keepingOf(k *chemistry.Keeping) *keeping {
	if k == nil {
		return nil
	}
	out := &keeping{WaterActivity: estimatedOf(k.WaterActivity), FreezingC: estimatedOf(k.Freezing), FromMemory: k.FromMemory}
	if h := k.Holding; h != nil {
		out.Holding = &holding{
			Days: number(h.Keeps.Days), PHUpTo: number(h.PH), ActivityUpTo: number(h.WaterActivity),
			MilkOrEgg: h.Animal, NeedsAssessment: h.NeedsAssessment, Source: h.Source,
		}
		if h.Keeps.At != nil {
			at := number(h.Keeps.At.Number)
			out.Holding.AtC = &at
		}
	}
	return out
}
