// Package swiss reads generic-foods.csv of the Swiss Food Composition Database
// of the Federal Food Safety and Veterinary Office (FSVO).
//
// # Model
//
// One row is one food, UTF-8, with a header: codes, names, synonyms and
// categories in German, French, Italian and English, the specific gravity, then
// five columns for each of 37 constituents: the figure, named by the
// constituent, and its "unit", "matrix unit", "value type" and "source", which
// therefore repeat and are told by the figure before them. English names come
// first; synonyms are separated by ";".
//
// A figure is per 100 g edible portion or, for drinks, oils and a few more, per
// 100 ml; the latter is divided by the specific gravity. Without one it is not
// known per 100 g: the value is unknown and the food's note says why.
//
// The value type gives the state (data/maps/swiss_value_types.csv): means and
// estimates are calculated, since the file does not tell which of them were
// analyses; "less than" is below the figure; "trace" is a trace, at most the
// figure and half the last digit that its column commonly prints
// (data/maps/swiss_columns.csv), which is also the limit of a "less than 0". A
// zero is a figure like another.
//
// A value names one of two works: figures that the publisher computed (recipes,
// sums), and figures from its numbered sources, whose numbers stand in the Ref.
//
// Licence: the FSVO gives the data free of charge for any use, commercial use
// too, with acknowledgement of the source. Citation: "Federal Food Safety and
// Veterinary Office FSVO, Swiss Food Composition Database".
//
// # Limits
//
// The specific gravity is printed with one decimal or none, so the amounts of
// drinks are known to about 3 % from it alone; that spread is in the density and
// not in the values. It is taken as g/ml. The release is recognised by its
// counts of foods and columns (data/editions.csv). The numbered
// sources are not in the file. datapackage.json is not needed and not read;
// branded-foods.csv was not seen and is not read. Whether available carbohydrate
// holds polyols or organic acids is not said: lemon juice prints sugars 6.1 and
// carbohydrate 6.1, more than sugars alone.
package swiss
