package unit

import (
	"errors"
	"strings"

	"sipsum/internal/fail"
)

// Misread says why a text is no amount or quantity, and how the whole text is written. It is the
// cause of the *fail.Error that the readers of this package give, so that a caller who knows what
// stands before the text can show the line as it should be.
type Misread struct {
	What  string
	Write []string // the text as it should be; more than one where only the writer knows which
	Alone bool     // no amount at all: the text may be a food
	Do    string   // what else helps; the only advice where nobody can tell how it is written
}

// Error gives what is wrong.
func (m *Misread) Error() string { return m.What }

// Advice tells what to write, each line with what stands before it.
func (m *Misread) Advice(before string) string {
	if len(m.Write) == 0 {
		return m.Do
	}
	lines := make([]string, len(m.Write))
	for i, line := range m.Write {
		lines[i] = before + line
	}
	text := "write: " + strings.Join(lines, ", or: ")
	if m.Do != "" {
		text += "; " + m.Do
	}
	return text
}

func (m *Misread) fault() error {
	e := fail.New(fail.Wrong, m.What, m.Advice(""))
	e.Cause = m
	return e
}

// wrong is a fault that only words can mend.
func wrong(what, do string) error { return (&Misread{What: what, Do: do}).fault() }

// rewrite is a fault of a text that should have been written so.
func rewrite(what string, write ...string) error {
	return (&Misread{What: what, Write: write}).fault()
}

const mostMends = 4 // of one text: a hand makes no more slips in one amount

// settle makes sure that what an error tells to write can be read. A text with two slips is shown
// with both of them mended.
func settle(err error, read func(text string) error) error {
	var m *Misread
	if !errors.As(err, &m) || len(m.Write) == 0 {
		return err
	}
	mended := Misread{What: m.What, Do: m.Do}
	for _, text := range m.Write {
		for range mostMends {
			var next *Misread
			again := read(text)
			if !errors.As(again, &next) {
				break
			}
			if len(next.Write) == 0 {
				return (&Misread{What: m.What + "; and " + next.What, Do: next.Do}).fault()
			}
			if text = next.Write[0]; mended.Do == "" {
				mended.Do = next.Do
			}
		}
		mended.Write = append(mended.Write, text)
	}
	return mended.fault()
}
