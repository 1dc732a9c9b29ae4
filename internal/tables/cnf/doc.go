// Package cnf reads the Canadian Nutrient File, the CSV files that Health Canada
// publishes for a whole release.
//
// # Model
//
// The files are CSV with a header, in Windows-1252 (French accents, the micro
// sign in units); a copy saved again as UTF-8 is read too. FOOD NAME, NUTRIENT
// NAME, NUTRIENT AMOUNT and NUTRIENT SOURCE must be there; FOOD GROUP, MEASURE
// NAME and CONVERSION FACTOR are read if they are. Columns are found by their
// name in the header and further ones are passed over, so the misspelt
// "NutrientSourc DescriptionF" of the published header does no harm.
//
//	FOOD NAME          FoodID FoodGroupID FoodDescription [FoodDescriptionF ScientificName]
//	NUTRIENT NAME      NutrientID NutrientUnit NutrientName Tagname NutrientDecimals
//	NUTRIENT AMOUNT    FoodID NutrientID NutrientValue StandardError NumberofObservations NutrientSourceID
//	NUTRIENT SOURCE    NutrientSourceID NutrientSourceDescription
//	FOOD GROUP         FoodGroupID FoodGroupName
//	MEASURE NAME       MeasureID MeasureDescription
//	CONVERSION FACTOR  FoodID MeasureID ConversionFactorValue
//
// The code of a food is its FoodID, the key of all other files. Columns are known
// by NutrientID (data/maps/cnf.csv); a tagname that means another constituent
// than the map says is an error, not a guess.
//
// A value is per 100 g edible part. A zero of the source "assumed zero" is
// assumed; a zero that has observations, or that was analysed, is below half of
// the last decimal that NUTRIENT NAME gives the column; any other zero is
// calculated. Other values are measured if their source stands for analyses
// (data/maps/cnf_sources.csv), else calculated: values taken over from the USDA
// unchanged do not say here how they came about.
//
//	sd = standard error · √(number of observations), where both are above zero
//	mass of a measure = conversion factor · 100 g
//
// Licence: Open Government Licence - Canada. Citation: Health Canada, Canadian
// Nutrient File, with the year of the release.
//
// # Limits
//
// FOOD NAME (a copy with five of its columns), NUTRIENT NAME and NUTRIENT SOURCE
// of the 2015 release were seen. NUTRIENT AMOUNT, MEASURE NAME, CONVERSION FACTOR
// and FOOD GROUP are read by the headers that publications about the file quote;
// the rows in testdata are of our own making. The licence is from memory. The
// files do not name their release: one with 5,690 foods and 152 columns is taken
// for 2015. The amounts of all foods are held while foods are read, about 32
// bytes each. REFUSE, YIELD and dates are not read. A file cut exactly between
// two rows cannot be told from a whole one.
package cnf
