package reporttest

import "sipsum/internal/sheet"

// Names that try to be more than names: markup, a formula, a table, a link, a list.
const (
	Markup  = `<script>alert("x")</script> & <b>'co'</b>`
	Formula = `=cmd|' /C calc'!A0`
	Table   = "a | b `c` *d* _e_ [f](https://example.org) # g"
	Sums    = `+1-1`
	At      = `@SUM(1)`
	Ordered = `1. first`
)

// Hostile lists them.
var Hostile = []string{Markup, Formula, Table, Sums, At, Ordered}

// Leaf has every form that a leaf can have; nothing of it is true.
func Leaf() *sheet.Leaf {
	return &sheet.Leaf{
		Kind: "card", Language: "en", Label: "card", Title: "Quiet Harbour " + Markup,
		Below: []string{"One of 2 servings", "118 g", "at 6 °C"},
		Blocks: []sheet.Block{
			{Role: sheet.InLine, Heading: "In it", Lines: []sheet.Line{{Text: Formula}, {Text: "抹茶 whey"}, {Text: Table}}},
			{Figures: []sheet.Figured{{Label: "Caffeine", Text: "about 72 mg"}, {Label: "Energy", Text: "226 kJ / 53 kcal"}}},
			{Role: sheet.Spoken, Heading: "Evidence", Lines: []sheet.Line{{Lead: "sweet", Text: "“Cordial brings 69 % of the sugars.”"}}},
			{Role: sheet.Tabled, Grid: &sheet.Grid{
				Caption: "Nutrition Facts, US", Shape: "vertical", Lead: []string{"2 servings a batch"},
				Head: []string{"", "Serving, 113 ml", "% Daily Value*"},
				Rows: []sheet.GridRow{
					{Label: "Calories", Cells: []sheet.GridCell{{Text: "50"}, {}}},
					{Label: "Trans Fat †", Indent: 1, Cells: []sheet.GridCell{{Text: "unknown", Unknown: true}, {}}},
					{Label: "Includes 6 g Added Sugars", Indent: 2, Whole: true, Cells: []sheet.GridCell{{Text: "12 %"}}},
				},
			}, Lines: []sheet.Line{{Text: "* The % Daily Value tells you more."}}},
			{Role: sheet.Tabled, Grid: &sheet.Grid{
				Caption: "Allergens, EU", Head: []string{"", Sums, At},
				Rows: []sheet.GridRow{
					{Label: "Milk", Cells: []sheet.GridCell{{Text: "contains", Sign: "●", Mark: "contains"}, {Text: "may contain", Sign: "◐", Mark: "may"}}},
					{Label: "Nuts", Cells: []sheet.GridCell{{Text: "to check", Sign: "?", Mark: "check"}, {Text: "none found", Sign: "–", Mark: "none"}}},
				},
			}},
			{Role: sheet.Boxed, Heading: "Allergens", Lines: []sheet.Line{
				{Lead: "Contains", Strong: "Milk"}, {Lead: "Not assessed", Strong: Markup, Text: "read its label"}, {Text: "Allergens under the rules of EU."},
			}},
			{Heading: "Please note", Lines: []sheet.Line{{Text: Ordered}, {Strong: "Milk", Text: "from whey (stated)", Source: "Annex II, item 7"}}},
			{Role: sheet.Small, Lines: []sheet.Line{{Text: "Not complete, US: Trans Fat."}}},
			{Role: sheet.Aside, Heading: "Before you use it", Lines: []sheet.Line{{Lead: "US", Text: "A served drink needs none."}}},
		},
		Foot: []string{"Figures are calculated and not analysed.", "hatched: nobody has measured it"},
	}
}
