package svgreport

import (
	"fmt"
	"strings"

	"sipsum/internal/sheet"
)

// Ink is what a part of a bar is filled with, and in what its words stand on it.
type Ink struct{ Fill, Text string }

// Inks are those of a hue: on warm paper, in the dark, and in print, where no colour is needed.
type Inks struct{ Light, Dark, Print Ink }

// Palette gives the inks of the hues. Powders are a grey blue, coffee is brown; the others differ in how
// light they are as much as in colour, so that neighbours are told apart by colour-blind eyes.
var Palette = map[sheet.Hue]Inks{
	sheet.HueCoffee:  {Ink{"#4b3a2f", "#fff"}, Ink{"#b08d74", "#16120e"}, Ink{"#000", "#fff"}},
	sheet.HuePowder:  {Ink{"#3d5a6c", "#fff"}, Ink{"#8fb0c4", "#16120e"}, Ink{"#8c8c8c", "#000"}},
	sheet.HuePowder2: {Ink{"#8ba3b3", "#16120e"}, Ink{"#56707f", "#fff"}, Ink{"#c6c6c6", "#000"}},
	sheet.HueWater:   {Ink{"#c4d0d3", "#16120e"}, Ink{"#45555b", "#fff"}, Ink{"#ececec", "#000"}},
	sheet.HueRest:    {Ink{"#a8a094", "#16120e"}, Ink{"#8d857a", "#16120e"}, Ink{"#dcdcdc", "#000"}},
	sheet.HueMany:    {Ink{"#6b6259", "#fff"}, Ink{"#a8a094", "#16120e"}, Ink{"#4d4d4d", "#fff"}},
	"a":              {Ink{"#5f6f52", "#fff"}, Ink{"#9db08c", "#16120e"}, Ink{"#5a5a5a", "#fff"}},
	"b":              {Ink{"#8a2f2a", "#fff"}, Ink{"#d9786e", "#16120e"}, Ink{"#1e1e1e", "#fff"}},
	"c":              {Ink{"#c98a5a", "#16120e"}, Ink{"#d9a679", "#16120e"}, Ink{"#bdbdbd", "#000"}},
	"d":              {Ink{"#6d4f7a", "#fff"}, Ink{"#b89bc6", "#16120e"}, Ink{"#3c3c3c", "#fff"}},
	"e":              {Ink{"#d0ad4f", "#16120e"}, Ink{"#dcc06c", "#16120e"}, Ink{"#d3d3d3", "#000"}},
	"f":              {Ink{"#2e6a6e", "#fff"}, Ink{"#6fb3b6", "#16120e"}, Ink{"#6a6a6a", "#fff"}},
	"g":              {Ink{"#c48a9d", "#16120e"}, Ink{"#dba9b8", "#16120e"}, Ink{"#a6a6a6", "#000"}},
	"h":              {Ink{"#44527f", "#fff"}, Ink{"#93a0d0", "#16120e"}, Ink{"#2d2d2d", "#fff"}},
	"i":              {Ink{"#a9b87f", "#16120e"}, Ink{"#c9d79f", "#16120e"}, Ink{"#b2b2b2", "#000"}},
	"j":              {Ink{"#7c2f52", "#fff"}, Ink{"#cf86a8", "#16120e"}, Ink{"#474747", "#fff"}},
	"k":              {Ink{"#e0bfa0", "#16120e"}, Ink{"#ecd3ba", "#16120e"}, Ink{"#dadada", "#000"}},
	"l":              {Ink{"#3f6b4a", "#fff"}, Ink{"#7fb58d", "#16120e"}, Ink{"#616161", "#fff"}},
}

// Hues are the rules of a style for pieces in some of the inks: "k-a" fills, "t-a" writes on it.
func Hues(of func(Inks) Ink) string {
	var b strings.Builder
	for _, h := range sheet.Hues() {
		ink := of(Palette[h])
		fmt.Fprintf(&b, ".k-%s{fill:%s}text.t-%s{fill:%s}\n", h, ink.Fill, h, ink.Text)
	}
	return b.String()
}
