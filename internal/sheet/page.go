package sheet

// Part is a part of a page. A renderer gives each its form, and adds none.
type Part int

// The parts, each named for what it tells.
const (
	Readings       Part = iota // what was read, what disagrees first
	Contradicting              // which readings contradict their recipe, where the others are not told
	InWords                    // the summary
	OnTop                      // the garnish
	Smelled                    // what is smelled and not calculated
	AloneInside                // what stands alone where no line of the build pours it
	Composed                   // the composition of a serving
	AsTheTablesSay             // the energy that the tables print
	InCategories               // the evidence
	InClaims                   // the verdict on each claim
	InHouseRules               // the answer to each house rule
	Shortly                    // the evidence, two lines a constituent
	FurtherRows                // what the evidence does not tell
	Solutions                  // the drink and its components as liquids
	MilkMap                    // where milk stays smooth
	Foams                      // its foams, beside what is published of foams
	OverTime                   // how the glass goes while it stands
	WhatBrings                 // the parts of what matters
	ByNumbers                  // numbers beside the tastes
	UnknownOf                  // what the foods do not say
	InCards                    // nutrition declarations
	CardsShortly               // and of their notes one line
	WorkedCards                // and how each figure came about
	Declared                   // allergens, what to check, cautions
	ToNote                     // what else should be known
	Signs                      // the signs that were used
	Daggers                    // of them, what rests on memory
	Sources                    // the works that were cited
	ToLog                      // batches, to be filled in by hand
)

// Page is a kind of page: the parts it has, in their order.
type Page struct {
	Kind  string
	Whole bool // of a liquid and of milk, all there is
	Brief bool // the brief is its first page
	Parts []Part
}

// The pages about one drink. What may be wrong stands first, what may hurt before the notes,
// the sources last.
var (
	AssayPage = Page{Kind: "assay", Whole: true, Parts: []Part{
		Readings, Composed, OnTop, Smelled, AsTheTablesSay, Solutions, OverTime, MilkMap, Foams, WhatBrings, ByNumbers, UnknownOf, ToNote, Signs, Sources,
	}}
	EvidencePage = Page{Kind: "evidence", Parts: []Part{Contradicting, InClaims, InHouseRules, OnTop, Smelled, AloneInside, InCategories, Signs, Sources}}
	WholePage    = Page{Kind: "sheet", Brief: true, Parts: []Part{
		Readings, InWords, OnTop, Smelled, InClaims, InHouseRules, Shortly, FurtherRows, Solutions, OverTime, MilkMap, Foams, CardsShortly, Declared, ToNote, Signs, Sources,
	}}
	CardPage      = Page{Kind: "card", Parts: []Part{Contradicting, InCards, Daggers}}
	WorkingPage   = Page{Kind: "card", Parts: []Part{Contradicting, WorkedCards, Daggers, Sources}}
	AllergensPage = Page{Kind: "allergens", Parts: []Part{Contradicting, Declared, Daggers, Sources}}
	LogPage       = Page{Kind: "log", Parts: []Part{ToLog}}
)
