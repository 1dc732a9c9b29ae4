// Package sheet is the one model of everything printable about a drink:
// the assay, the evidence, the cards, the allergens and cautions, the tables
// that stand behind it. Every renderer (text, JSON, and later others) reads this
// model and adds nothing but form.
//
// # Model
//
// What is decided here, once for all forms: which parts a page has and in which order
// (page.go); which constituents are shown, in which groups, by which words (groups.csv);
// what counts as unknown and what as none (known.go); what is listed, named or only counted
// (brought.go, questions.go); the lines of the summary; what must be read first
// (notices.go); what of a liquid is told and what is withheld, with the reading that would
// help (liquid.go); the sentences that keep somebody safe (sentences.go); and what a drink
// file asks in vain (check.go).
//
// The numbers beside the tastes get their words in bynumbers.go. What a drink file calls an aroma
// is named with the volatiles that are published of such a material (data/aroma_volatiles.csv),
// never with a dose; its words go to the cautions and allergens as those of a treat: do (aroma.go).
//
// What is handed out or hung up is a leaf (leaf.go): blocks of figures, lines and tables in
// their order and words. Cards for the bar, for guests and for the stage (leaves.go), the
// allergens (allergensleaf.go) and the menu (menuleaf.go) are leaves; their texts are rows of
// data/card_words.csv by language. A guest is told nothing that is not known, is told to ask
// for it, and gets the cautions in words of their own (advice.CODE there; an empty one is for
// the kitchen, and one that has no row yet makes the card say that there is more to ask).
//
// A bench card (batchleaf.go) is a batch (package batch) in the order of work, with boxes to tick off,
// and all that the sheet warns of; a pot keeps as the log says where a code is stricter than its file.
//
// A brief (brief.go) is one screen: five senses with their figures and the ingredients that bring
// them, what may surely be said, what is tempting to say and does not hold (briefdont.go), the reading
// to take next, the one change that mends something (briefchange.go), and what a guest must know. A sentence
// of it holds in every draw with all that nobody has measured at its most against it; who brings what
// is said in the words of the evidence (package ladder); a lead is warned of where the claim that it brings
// half is not even likely. A change is of one written amount, and for what it mends alone (briefwish.go): a
// claim or a house rule that fails, a glass that overflows, then what something unknown decides; found at
// central values (briefsearch.go) and borne out by a run with the draws (briefmend.go). Of the smallest few
// it is the one that breaks nothing which holds; else it says what it breaks, and where it makes the serving
// or the coffee smaller (briefharm.go). What has no room a form counts.
//
// A speech (speech.go) gathers, for package speech, what may be said on stage in a minute and a half:
// who brings what, how much, why it should be tasted, claims as far as they are borne, and what
// somebody has to be told.
//
// A drink against another (compared.go) is a leaf too: what is worth a word (comparedwords.go), what
// differs and what hardly does, what makes it, what the files say otherwise, and which allergens and
// cautions come or go. A word is said of what the whole interval bears, and of nothing else.
//
// On paper (paper.go) a drink is a page with the brief and its pictures, a page with the card, and an
// annex. A picture (picture.go) is what stands on its axis and what each mark says in words; a form
// that draws nothing prints its table. An ingredient has one hue in all of them (hue.go). Figures
// are written by package figure; the words of paper are rows of data/paper_words.csv.
//
// What a proof pack states of a drink (package proof) are the figures that its pages print, each as printed
// and as calculated, with what brings those of a serving (proven.go, provenparts.go).
//
// Cards, their workings and the declarations are made when they are asked for, and once.
//
// # Limits
//
// The guest's card and the allergens are told in the languages of card_words.csv; all else is in English, and so
// are names as they are written, numbers, and a declaration of which card_names.csv has not every row. What is not
// English there is our own, and nobody who works in that language has read it yet. Renderers calculate nothing. How a number is rounded, a line broken and a state named is
// theirs; so is the prose of a page that decides nothing. The claims of a drink
// are judged for the pages that tell them (said.go).
package sheet
