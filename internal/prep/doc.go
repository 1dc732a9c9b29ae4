// Package prep is what each preparation step does to a pot: one file a step,
// pure functions of the pot and of columns of draws. The comment of each step
// gives its formula, where it is valid, what it cannot know and its sources; the
// figures are rows of data/ with their range.
//
// # Model
//
// A separating step decides which share of each constituent of each row stays
// (ledger.Model):
//
//	reduce       water leaves until the mass is reached, alcohol before it and acetic acid
//	             behind it by their volatility (data/vapour_ethanol.csv, kinetics.csv)
//	strain       suspended solids, fat and protein pass by data/phases.csv (share
//	press        passed by phase, food group and medium, wide; what is dissolved
//	             passes wholly, leaves and grounds stay and give as in a steep);
//	             the liquor that passes is collected in part: all of it keeps one
//	             composition
//	curdle       milk parts by data/partition.csv into liquor and curd; the liquor
//	             is collected in part; data/curdling.csv says when milk curdles
//	brew         the dose gives its solids by data/extraction.csv and brewing.csv,
//	steep        the water is shared between the cup and the grounds; the caffeine
//	             of coffee is by liquor and yield, that of a tea that is steeped by
//	             time and temperature (data/kinetics.csv); what is taken out of a
//	             steep before its time gives less of everything
//	wash         a fat is stirred in and taken out again
//	concentrate  ice leaves and takes a part of what is dissolved; or, in vacuum, what
//	             leaves in reduce
//	clarify      an agent or a centrifuge holds back by data/phases.csv what is not
//	             dissolved, and most of the agent; milk parts as in curdle
//	heat         published retention factors of one code (USDA release 6), each
//	             rounded to 5 %, so rectangular ± 2.5 %; kept hot for a time, vitamin C is
//	             unknown above what the fastest published loss leaves
//	split        shares stated by the designer; what is not named stays with the
//	             water
//
// A changing step moves mass between constituents (ledger.Reaction):
//
//	invert       sucrose and water become glucose and fructose, by a stated share or
//	             by first-order kinetics (data/kinetics.csv)
//	hydrolyse    lactose and water become glucose and galactose
//	heat         sucrose splits by the pot's own pH, the time and the temperature, as in
//	reduce       invert; of a reduction whose time nobody wrote it is drawn over what a pot
//	             takes to boil away (boil.go)
//	caramelise   sugars become carbohydrate without a name and a little acid, at most
//	             what data/kinetics.csv says; at least what the weight of a pot says that
//	             was weighed (weighedcaramel.go)
//	convert      starch and water become glucose or maltose, by a stated share; heat and
//	             treat say where a pot holds what would do it (data/enzyme_foods.csv)
//	ferment      sugars become what is stated by their equations
//	             (data/fermentation.csv); the gas leaves; what is not stated of the
//	             products is unknown. Or as much sugar goes as makes the pot read what
//	             was read of it
//
// One table (methods.go) has all that is known of a step beside its grammar: what it makes
// and brings, whether the pot's mass or gas is stated after it, and how it is done with
// what a Kitchen gives. A step that does not stand in it is refused.
//
// What a step makes has a ceiling, and every figure is continuous in a step's parameter
// down to no effect: a step that does next to nothing changes next to nothing. That milk
// parted with acid is evidence of the pot's pH (Outcome.Parted).
//
// Sugars stay added, or not, through every step (KeepAdded). What takes water out of a juice
// tells it how much (ledger.WaterGone), and the finished drink counts what its own water does
// not bring back as added sugar (AddConcentrated). What may boil off of sulphur dioxide is
// unknown afterwards.
//
// foam puts bubbles in: an overrun as it was read, and a siphon at rest by Henry's law, its gas
// dissolved in the liquid or above it (Rest). Bubbles weigh nothing here and change no figure by mass;
// carbon dioxide alone stays in the liquid: as stated or, since every bubble lets it go, as much as liquid holds
// open at 1 atm, drawn from none to all that the siphon dissolved. Whether a foam stands is never predicted.
//
// treat is a technique in the designer's words: it changes nothing, and says so; so does cool.
//
// A pouring step adds: adjust a food, as much as brings the pot to a reading (package dosing:
// the dose is that of the central values, its interval that of the draws), chill and dilute
// water (chill as weighed, or by the heat that the ice takes: data/heat_capacities.csv),
// carbonate carbon dioxide (solubility
// of Weiss 1974, package solution). Adding ingredients is the ledger's Pour and Mix.
//
// A step that asks for what the pot cannot give at central values (more collected
// than passes, reduced below the dry matter) is an error and changes nothing; in
// single draws it takes what there is. What is unusual but possible is a note.
//
// # Limits
//
// Strain and press differ only in the word: no source separates what a press
// passes from what a cloth passes. Minerals and vitamins bound to the pulp of fruit are
// treated as dissolved. Of nitrous oxide and nitrogen what stays dissolved in a poured foam, at most what water
// holds at 1 atm (2 g/l at 4 °C), counts for no mass, nor does the gas in its bubbles; of carbon dioxide what the bubbles
// hold is not taken off what the siphon dissolved. What is partly ice is charged with no figure; above 40 °C the steam
// of a siphon is not in its pressure. Aroma is not modelled, nor the sulphur dioxide that yeasts make. Fruit
// that is boiled down is no juice. The caffeine of steeped tea is tested on no recipe that was
// held out (testdata/brew).
package prep
