package sheet

import (
	"fmt"
	"sync"

	"sipsum/internal/embedded"
)

// chill is what codes ask of food that needs control of time and temperature.
type chill struct {
	Days                       float64 // until it is used up, the day it is made counted
	Cold                       float64 // °C
	From, First, Within, InAll float64 // cooling: °C, °C, h, h
	hot                        map[string]float64
}

// coldChain reads data/cold_chain.csv.
var coldChain = sync.OnceValue(func() chill {
	c := chill{hot: map[string]float64{}}
	for _, row := range embedded.Rows("cold_chain.csv") {
		value := row.Number("value")
		switch key := row.Text("key"); key {
		case "date mark":
			c.Days = value
		case "cold":
			c.Cold = value
		case "cool from":
			c.From = value
		case "cool first to":
			c.First = value
		case "cool first within":
			c.Within = value
		case "cool in all within":
			c.InAll = value
		case "hot":
			c.hot[row.Text("rules")] = value
		default:
			row.Fail("no key %q", key)
		}
	}
	return c
})

// Hot gives the temperature below which a warm drink that needs control may not wait, °C.
func (c chill) Hot(rules string) float64 {
	if celsius, found := c.hot[rules]; found {
		return celsius
	}
	return c.hot[""]
}

// dateMark says how long it keeps.
func (c chill) dateMark() string {
	return fmt.Sprintf("Date it and use it up within %g days at %g °C or colder, the day it is made counted.", c.Days, c.Cold)
}

// cooling says how what was warm is cooled.
func (c chill) cooling() string {
	return fmt.Sprintf("What was warm goes from %g to %g °C within %g h and to %g °C within %g h in all.", c.From, c.First, c.Within, c.Cold, c.InAll)
}
