package sheet

import (
	"slices"
	"strings"
	"sync"

	"sipsum/internal/clean"
	"sipsum/internal/embedded"
)

// Language is a language in which a guest can be told of a drink.
type Language struct {
	Code string // ISO 639-1
	Name string // in itself
}

// English is the language of all that is not for a guest, and of what another has no words for.
const English = "en"

const english tongue = English

// Languages are those of data/card_words.csv, in their order there.
var Languages = sync.OnceValue(func() []Language {
	var list []Language
	for _, row := range embedded.Rows("card_words.csv") {
		if row.Text("key") == "language" {
			list = append(list, Language{row.Text("language"), row.Text("text")})
		}
	}
	return list
})

// tongue is the code of a language in which something is said.
type tongue string

// tongueOf reads the code of a language; what nobody has words in is English.
func tongueOf(code string) tongue {
	if slices.ContainsFunc(Languages(), func(l Language) bool { return l.Code == code }) {
		return tongue(code)
	}
	return english
}

// wordings are the wordings of cards, and of the sheet on paper, by language and key.
var wordings = sync.OnceValue(func() map[tongue]map[string]string {
	all := map[tongue]map[string]string{}
	for _, file := range []string{"card_words.csv", "paper_words.csv"} {
		for _, row := range embedded.Rows(file) {
			in := tongue(row.Text("language"))
			if all[in] == nil {
				all[in] = map[string]string{}
			}
			all[in][row.Text("key")] = row.Text("text")
		}
	}
	return all
})

// names are the printed names of allergens and of the rows of a declaration, by language and English.
var names = sync.OnceValue(func() map[tongue]map[string]string {
	all := map[tongue]map[string]string{}
	for _, row := range embedded.Rows("card_names.csv") {
		in := tongue(row.Text("language"))
		if all[in] == nil {
			all[in] = map[string]string{}
		}
		all[in][row.Text("of")] = row.Text("text")
	}
	return all
})

// text gives a text of a language, else of English.
func (in tongue) text(key string) (string, bool) {
	text, ok := wordings()[in][key]
	if !ok {
		text, ok = wordings()[english][key]
	}
	return text, ok
}

// say gives a text with its gaps {} filled in order. A key that is not there is a fault of the build.
func (in tongue) say(key string, gaps ...string) string {
	text, ok := in.text(key)
	if !ok {
		panic("sheet: card_words.csv has no text " + key)
	}
	for _, with := range gaps {
		text = strings.Replace(text, "{}", with, 1)
	}
	return text
}

// listed writes a list as a sentence does.
func (in tongue) listed(list []string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	last := len(list) - 1
	return strings.Join(list[:last], ", ") + " " + in.say("and") + " " + list[last]
}

// named gives a printed name in the language; of one that it has no word for the English stands.
func (in tongue) named(name string) string {
	if word, ok := names()[in][name]; ok {
		return word
	}
	if word, ok := names()[in][clean.LowerFirst(name)]; ok { // it begins a list
		return clean.UpperFirst(word)
	}
	whole, parts, inside := strings.Cut(strings.TrimSuffix(name, ")"), " (") // "Nuts (Hazelnut, Walnut)"
	if inside && strings.HasSuffix(name, ")") {
		return in.named(whole) + " (" + in.namedAll(parts) + ")"
	}
	if strings.Contains(name, ", ") {
		return in.namedAll(name)
	}
	return name
}

func (in tongue) namedAll(list string) string {
	parts := strings.Split(list, ", ")
	for i, part := range parts {
		parts[i] = in.named(part)
	}
	return strings.Join(parts, ", ")
}

// knows tells whether the language has a word for a printed name.
func (in tongue) knows(name string) bool {
	_, ok := names()[in][name]
	return ok || in == english || name == ""
}

// cardWords are the English texts by their keys.
func cardWords() map[string]string { return wordings()[english] }

// say gives an English text.
func say(key string, gaps ...string) string { return english.say(key, gaps...) }
