package proof

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
)

// shortDigits are as many digits of a digest as somebody compares by eye (our own bound): 48 bits.
const shortDigits = 12

// digest is the SHA-256 of a value as canonical JSON, hexadecimal. Values of this package have a
// form in JSON, whatever they hold.
func digest(of any) string {
	text, err := json.Marshal(of)
	if err != nil {
		panic("proof: " + err.Error())
	}
	return digestOf(text)
}

// Digest is the digest of what a row says.
func (p *Published) Digest() string { return digest(p) }

// TextDigest is the digest of a text as it stands.
func TextDigest(text string) string { return digestOf([]byte(text)) }

func digestOf(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])
}

// Short is the digest that a card bears: of the program, the texts of the drink, seed and draws, and the
// rows. Names of files are no part of it: the same drink has the same digest wherever it lies.
func (in *Inputs) Short(program string) string {
	of := struct {
		Schema, Program string
		Texts           []string
		Seed            uint64
		Draws           int
		Rows            [][2]string
	}{Schema: Schema, Program: program, Seed: in.Seed, Draws: in.Draws}
	for _, f := range in.Files {
		of.Texts = append(of.Texts, f.Text)
	}
	for _, r := range in.Rows {
		of.Rows = append(of.Rows, [2]string{r.Food, r.Digest})
	}
	return digest(of)[:shortDigits]
}
