package estimate

import "fmt"

// State tells how a value is known, from best to worst.
type State uint8

// The states, ordered: a sum carries the worst state of its weighty parts.
const (
	Measured   State = iota // analysed
	Calculated              // derived from analysed values
	Assumed                 // a sourced or publisher's assumption, usually of zero
	Trace                   // present, too little to state
	Below                   // looked for, below a limit
	Unknown                 // nobody has looked, or nobody has said
)

var stateNames = [...]string{"measured", "calculated", "assumed", "trace", "below", "unknown"}

// String gives the state's word, as in files and JSON.
func (s State) String() string { return stateNames[s] }

// ParseState reads a state's word.
func ParseState(word string) (State, error) {
	for i, name := range stateNames {
		if name == word {
			return State(i), nil
		}
	}
	return Unknown, fmt.Errorf("unknown state %q", word)
}
