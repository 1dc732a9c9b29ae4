package jsonreport

import (
	"sipsum/internal/houserules"
	"sipsum/internal/sheet"
)

// houseForm is the answer to house rules.
type houseForm struct {
	File    string      `json:"file"`
	From    string      `json:"rules"` // where they stand, in the words of who typed them in
	Lines   []houseLine `json:"lines"`
	Remarks []string    `json:"remarks"`
}

type houseLine struct {
	Key     string   `json:"key"`
	Rule    string   `json:"rule"`
	Verdict string   `json:"verdict"` // pass, fails, cannot tell
	Why     string   `json:"why"`
	Settle  []string `json:"settle"`
}

func houseOf(s *sheet.Sheet) *houseForm {
	if s.House == nil {
		return nil
	}
	h := s.House
	return &houseForm{
		File: h.Rules.File, From: h.Rules.From, Remarks: append([]string{}, h.Remarks...),
		Lines: each(h.Lines, func(l houserules.Line) houseLine {
			return houseLine{l.Key, l.Rule, string(l.Verdict), l.Why, append([]string{}, l.Settle...)}
		}),
	}
}
