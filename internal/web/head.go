package web

// head is what stands above a page.
type head struct {
	Title   string   // of the page; of a drink, its name
	Below   []string // what stands small beside the title
	Drink   string   // the file that the page is about; empty: none
	Here    string   // which page of the drink it is, as its address ends
	Styles  []string // of the page, beside style.css: names of files among the assets
	Modules []string // scripts of the page, likewise
}

// place is a page of a drink.
type place struct{ Path, Words string }

// places are the pages of a drink, in the order of the navigation; the first is where it is built.
var places = []place{
	{"", "Build"}, {"/stage", "Stage"}, {"/guest", "Guest"}, {"/versions", "Versions"}, {"/print", "Print"}, {"/send", "Send"},
}

// Places are where one can go from a page of a drink.
func (h head) Places() []place {
	if h.Drink == "" {
		return nil
	}
	return places
}
