// Package minutes tells what a glass holds while it stands: how warm it is, how much gas is left, what
// its ice has made of it, from the pour to ten minutes after. What a judge sips is not what was poured.
//
// # Model
//
// Draw by draw, with rates that the file states (stands:) or else those of data/minutes.csv:
//
//	warmth   T = room + (T₀ − room)·exp(−k t)        k = k₁₅₀·(150 g/m)^⅓       (warmth.go)
//	on ice   T = R + (T₀ − R)·exp(−c t), and ice melts by the heat that the drink gives and the room brings:
//	         dM = [C·(−dT) + k·C₀·(room − T) dt] / (L + c_w·T)
//	gas      g = g_air + (g₀ − g_air)·(1 − p)·exp(−k_g t)                       (gas.go)
//
// m is the mass of a serving, C what it holds of heat a kelvin, C₀ at the pour (prep.Holds), L the heat of
// fusion. R, where it rests, lies between 0 °C and halfway to where the drink would freeze, and comes nearer to 0 °C as what melts thins
// it; of a spirit too strong for the published curve that is the coldest of the curve. What is colder than R warms, no faster than the
// room can bring. With ice C₀ k grows by ((m + ice)/m)^⅔: the surface is that of all in the glass. Where the file says how fast its ice
// melts, that heat is the drink's and the room's: it melts no faster than they can pay for. Once the ice has gone the drink warms as one
// without, with the heat of what has melted. p is what pouring takes of gas that comes out of
// a bottle of somebody else's; what a step of the file says is left in the glass is there already.
// g_air is what stays in open air: the bicarbonate that no acid frees. k_g is of a drink that sparkles, or of
// one that holds less than water does under 1 atm of the gas.
//
// A drink that has lost gas, or that ice has watered, is a pot of its own: its °Brix, titratable acidity and
// pH are those of package chemistry, read as a meter reads them at 25 °C. Where nothing has left and nothing
// has come in they are the assay's own, as are all figures at 0 min.
//
// The clock (clock.go) goes through the steps of finish that say how long they take: once for all
// glasses, or glass by glass, as many side by side as hands are at it; a step is done with all glasses before
// the next begins. A glass stands from the first step that is done glass by glass, with it the last.
//
// # Limits
//
// Ten minutes: the rates were read over ten to twenty. A glass warmer or colder than the drink gives or takes heat
// at once; at: is the temperature in the glass. Hands, wind, lids, stirring and sips are left out; ice is taken
// to be at 0 °C, while ice out of a freezer of −18 °C takes a tenth more heat. Ice that does
// not fit into the glass is followed as if it were in a larger one. A melt that is stated too slow for the warmth of its drink is
// believed. Ice in a drink of more than 30 °C is refused: most of it melts at once, and a step of finish tells how much. A hot drink loses
// water with its steam, a gram or two, which is not counted. Foam takes nothing out. What is frozen as it is
// served has no temperature here, nor what is too hot for the rates. Aroma is not calculated.
package minutes
