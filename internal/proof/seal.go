package proof

import (
	"bytes"
	"encoding/json"
	"slices"
)

// digits is how many hexadecimal digits a seal has; zeros stand in their place while it is taken.
const digits = 64

var zeros = bytes.Repeat([]byte{'0'}, digits)

// seal is what stands before and behind the digits of a seal, at the end of a file.
type seal struct{ before, behind string }

var (
	ofPack = seal{`  "sha256": "`, "\"\n}\n"}
	ofPage = seal{"<!-- sha256 ", " -->\n"}
)

// What stands around a pack in a page.
const (
	BlockBegins = "<script type=\"application/json\" id=\"sipsum-proof\">\n"
	BlockEnds   = "</script>"
)

// Encode writes a pack with its seal. The signs of HTML are written as escapes, so that the same bytes
// may stand in a page.
func (p *Pack) Encode() []byte {
	blank := *p
	blank.Seal = string(zeros)
	text, err := json.MarshalIndent(blank, "", "  ")
	if err != nil {
		panic("proof: " + err.Error()) // what is no number is left out of figures and rows
	}
	return ofPack.set(append(text, '\n'))
}

// SealPage writes a seal behind a page.
func SealPage(page []byte) []byte {
	return ofPage.set(slices.Concat(page, []byte(ofPage.before), zeros, []byte(ofPage.behind)))
}

// set puts the digits of a seal in the place of its zeros.
func (s seal) set(file []byte) []byte {
	at := s.place(file)
	copy(file[at:], digestOf(file))
	return file
}

// place is where the digits of a seal stand; -1 if there is none.
func (s seal) place(file []byte) int {
	at := len(file) - len(s.behind) - digits
	if at < len(s.before) || !bytes.HasSuffix(file, []byte(s.behind)) || !bytes.HasSuffix(file[:at], []byte(s.before)) {
		return -1
	}
	return at
}

// holds reports whether a file is the one that was sealed.
func (s seal) holds(file []byte) bool {
	at := s.place(file)
	if at < 0 {
		return false
	}
	blank := bytes.Clone(file)
	copy(blank[at:], zeros)
	return string(file[at:at+digits]) == digestOf(blank)
}
