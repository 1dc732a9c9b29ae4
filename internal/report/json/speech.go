package jsonreport

import (
	"io"
	"slices"

	"sipsum/internal/sheet"
	"sipsum/internal/source"
	"sipsum/internal/speech"
)

// spokenLine is a sentence of a speech. figure is what it was rounded from: high has all that is
// unknown at its most, and is null where nothing bounds it.
type spokenLine struct {
	Kind     string       `json:"kind"`
	Category string       `json:"category,omitempty"`
	Text     string       `json:"text"`
	Words    int          `json:"words"`
	Figure   *spokenRange `json:"figure,omitempty"`
	Sources  []int        `json:"sources"` // places in sources, the first is 1
}

type spokenRange struct {
	Low      number `json:"low"`
	High     number `json:"high"`
	Unit     string `json:"unit"`
	SaidLow  number `json:"said_low"`
	SaidHigh number `json:"said_high"` // null: "at least"
	SaidUnit string `json:"said_unit"`
}

type leftLine struct {
	Kind string `json:"kind"`
	Text string `json:"text"`
	Why  string `json:"why"`
}

type speechForm struct {
	Register    speech.Register `json:"register"`
	Words       int             `json:"words"`
	SecondsSlow number          `json:"seconds_slow"`
	SecondsFast number          `json:"seconds_fast"`
	Lines       []spokenLine    `json:"lines"`
	LeftOut     []leftLine      `json:"left_out"`
	NotSpoken   []leftLine      `json:"not_spoken"`
}

type paceForm struct {
	Slow   number `json:"slow"` // words a minute
	Fast   number `json:"fast"`
	Most   number `json:"most_seconds"`
	Source string `json:"source"`
}

// Speech writes sipsum.speech/1: the speech in each register, sources numbered through all.
func Speech(w io.Writer, s *sheet.Sheet, registers []speech.Register) error {
	var all []source.Work
	list := []speechForm{}
	for _, r := range registers {
		list = append(list, speechOf(sheet.SpeechOf(s, r), &all))
	}
	works := []work{}
	for _, x := range all {
		works = append(works, workOf(x))
	}
	pace := speech.Limits()
	return write(w, struct {
		head
		Pace     paceForm     `json:"pace"`
		Speeches []speechForm `json:"speeches"`
		Sources  []work       `json:"sources"`
	}{headOf("sipsum.speech/1", s), paceForm{number(pace.Slow.Value), number(pace.Fast.Value), number(pace.Time.Value), pace.Slow.Source}, list, works})
}

func speechOf(s speech.Speech, all *[]source.Work) speechForm {
	out := speechForm{
		Register: s.Register, Words: s.Words, SecondsSlow: number(s.Slow), SecondsFast: number(s.Fast),
		Lines: []spokenLine{}, LeftOut: leftOf(s.LeftOut), NotSpoken: leftOf(s.Unspoken),
	}
	for _, l := range s.Lines {
		line := spokenLine{Kind: l.Kind, Category: l.Category, Text: l.Text, Words: l.Words, Sources: []int{}}
		if t := l.Figure; t != nil {
			line.Figure = &spokenRange{number(l.Of.Low), number(l.Of.UpTo), l.Of.Unit, number(t.Low), number(t.High), t.Unit}
		}
		for _, w := range l.Sources {
			i := slices.Index(*all, w)
			if i < 0 {
				i = len(*all)
				*all = append(*all, w)
			}
			line.Sources = append(line.Sources, i+1)
		}
		out.Lines = append(out.Lines, line)
	}
	return out
}

func leftOf(list []speech.Left) []leftLine {
	out := []leftLine{}
	for _, l := range list {
		out = append(out, leftLine{l.Kind, l.Text, l.Why})
	}
	return out
}
