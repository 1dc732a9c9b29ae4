// Package fdc reads releases of USDA FoodData Central (US Department of
// Agriculture, Agricultural Research Service): the CSV files of any of its data
// types, as a folder or as the .zip that the agency publishes, and the JSON of
// the Foundation foods. The agency's data are in the public domain; it asks for
// the citation "U.S. Department of Agriculture (USDA), Agricultural Research
// Service. FoodData Central. Version … Internet: fdc.nal.usda.gov".
//
// # Model
//
// The CSV files are UTF-8 with a header row and quoted texts. Columns are found
// by name, so that older releases (without loq) and newer ones read alike, and
// columns that are not known do no harm. food_nutrient.csv, nutrient.csv and
// food.csv must be there, branded_food.csv may stand for food.csv;
// food_category, food_portion, measure_unit, food_nutrient_derivation,
// food_nutrient_source, sr_legacy_food, foundation_food, survey_fndds_food and
// wweia_food_category are read if they are. The five main files are recognised
// by their columns where a copy has given them other names (such a copy may
// lack the end of its last line); if two files of a folder have the columns of
// one, it is refused.
//
// A nutrient is known by its id, never by its name, which has changed between
// releases and is not unique; rows of survey foods name nutrients by the older
// number (203, 269.3). A nutrient that data/maps/fdc.csv does not list is kept
// under its id. The factor to the vocabulary's unit comes from the unit that
// the release prints.
//
// Foods come in the order of food.csv, with their fdc_id as code. Samples and
// purchases (data/maps/fdc_data_types.csv) are refused: their food has the mean.
// A row of food.csv that is there twice, the same in every cell, is one food.
// The rows of food_nutrient.csv come out of order: nutrients shuffled within a
// food, foods in several places. So all rows are first laid into drawers, each
// for a range of foods; drawers that hold too much are emptied into a temporary
// file; then drawer after drawer is taken out and its foods are put together.
// Memory is bounded by the number of foods, not of values. A release of the
// values without food.csv (a course's slice, say) gives each food that no file
// describes its number for a name.
//
// A value is per 100 g edible part. A blank amount is not given: no value. Of
// the others:
//
//	amount 0, derivation Z or source 7      assumed
//	amount 0, limit of quantitation stated  below, with that limit
//	amount 0, observations                  below, half of the last decimal that
//	                                        SR28 gives the column (fdc_decimals.csv)
//	amount > 0, observations, analysed      measured
//	all others                              calculated
//
// Analysed is a derivation whose source code stands for analyses
// (data/maps/sr_sources.csv), or none: so the agency writes plain analyses. A
// release without food_nutrient_derivation.csv names derivations by number; the
// numbers in data/maps/fdc_derivations.csv were told from values that are also
// in SR28. Footnotes stand in the note of the food.
//
// Releases have foods with two rows for one nutrient (labels of food as sold and
// as prepared): the first stands and the note tells the other. The same row
// twice is an error.
//
// A label's text of ingredients, its brand, owner and article number (GTIN,
// restored to 14 digits: copies lose leading zeros) stand in the note of the
// food, each on a line with its heading.
//
// # Limits
//
// Amounts of labels are the agency's conversion to 100 g; where the serving is a
// volume they are per 100 ml and the density is not known: the note says so. A
// zero on a label is a rounded one and stays calculated. Of the two columns of
// sugars (2000, and 1063 for food labelling), fat (1004, 1085) and vitamin D
// (µg, IU) only the first is the constituent; the other is kept beside it. The
// median, the year of the samples, sub-samples, methods, input foods, attributes,
// conversion factors and footnotes of portions are not read. The edition is the
// last date of publication among the foods, because the files name none. A
// release cut off exactly between two rows of food_nutrient.csv cannot be told
// from a whole one. The temporary file takes about 15 bytes a value and the
// length of the texts.
package fdc
