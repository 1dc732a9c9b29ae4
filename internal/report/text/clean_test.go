package textreport_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"

	"sipsum/internal/report/text"
)

func TestCleanTakesOutWhatCanHurt(t *testing.T) {
	for _, c := range []struct{ what, text, want string }{
		{"plain text stays", "Sour cherry juice, 12 °Brix", "Sour cherry juice, 12 °Brix"},
		{"accents stay", "Crème fraîche · Żurek · 抹茶", "Crème fraîche · Żurek · 抹茶"},
		{"a colour of the terminal", "red \x1b[31mcherry\x1b[0m", "red [31mcherry[0m"},
		{"a title of the window", "\x1b]0;gone\x07juice", "]0;gonejuice"},
		{"a control of eight bits", "a\u009b2Jb", "a2Jb"},
		{"bell, backspace, delete", "a\x07\x08\x7fb", "ab"},
		{"line ends and tabs become a space", "two\r\nlines\tand\vmore", "two lines and more"},
		{"separators of lines and paragraphs", "a\u2028b\u2029c", "a b c"},
		{"reading turned round", "gpj.\u202etxe.\u2066x\u2069", "gpj.txe.x"},
		{"marks of direction", "a\u200eb\u200fc\u061cd", "abcd"},
		{"unseen characters", "a\u200bb\ufeffc\u2060d\u00ade", "abcde"},
		{"tags and variation selectors", "a\U000e0041b\ufe0fc", "abc"},
		{"private use", "a\ue000b", "ab"},
		{"joiners of Persian and Indic names stay", "می\u200cخوش", "می\u200cخوش"},
		{"not UTF-8", "a\xffb", "a\ufffdb"},
		{"blanks of every kind", "  a\u00a0\u2003 b  ", "a b"},
		{"a pile of accents", "a" + strings.Repeat("\u0301", 50) + "b", "a" + strings.Repeat("\u0301", 4) + "b"},
		{"nothing", "", ""},
	} {
		assert.Equal(t, c.want, textreport.Clean(c.text, 200), c.what)
	}
}

func TestCleanClips(t *testing.T) {
	assert.Equal(t, "abcd", textreport.Clean("abcd", 4))
	assert.Equal(t, "abc…", textreport.Clean("abcde", 4))
	assert.Equal(t, "ab…", textreport.Clean("ab cde", 4), "no blank before …")
	long := textreport.Clean(strings.Repeat("ä ", 1_000_000), 120)
	assert.LessOrEqual(t, utf8.RuneCountInString(long), 120)
}

func FuzzClean(f *testing.F) {
	f.Add("a\x1b[31m\u202e", 10)
	f.Fuzz(func(t *testing.T, text string, most int) {
		most = max(1, most%500)
		out := textreport.Clean(text, most)
		assert.True(t, utf8.ValidString(out))
		assert.LessOrEqual(t, utf8.RuneCountInString(out), most)
		assert.Equal(t, out, textreport.Clean(out, most), "cleaning twice changes nothing")
		assert.NotContains(t, out, "\x1b")
	})
}
