// Package fndds reads the nutrient values of the USDA Food and Nutrient Database
// for Dietary Studies, "At A Glance" workbooks.
//
// # Model
//
// The workbook of nutrient values has one row for each food, below a title and a
// row that names the columns; some names hold a line break before their unit. A
// copy as CSV (UTF-8, without the title) is read as well. The file is recognised
// by its columns, not by its name; beside a workbook a copy is left alone.
// data/maps/fndds_headers.csv gives each column the number that the same nutrient
// has in Standard Reference, and data/maps/fndds.csv maps the numbers.
//
// Values are per 100 g edible part of the food as eaten. The agency calculates
// them from recipes, whose ingredients have values in Standard Reference or other
// sources, with retention factors and a change of moisture; a gap is filled by
// the agency. All values are therefore calculated, zeros included, and none is
// missing. Codes have eight digits. The WWEIA category is the publisher's group.
//
// The title names the edition; a CSV copy is recognised by its counts of foods
// and columns (data/editions.csv).
//
// # Source
//
// US Department of Agriculture, Agricultural Research Service, Food Surveys
// Research Group (2020) Food and Nutrient Database for Dietary Studies 2017-2018.
// Public domain (US Government work).
//
// # Limits
//
// The workbook of ingredients is not read: its lines are recipes, codes and
// weights without composition. Portions, which are in other files, are not read.
// A zero may be assumed or rounded; the workbook does not say which. Other
// editions are refused by name if they have another column.
package fndds
