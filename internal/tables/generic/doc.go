// Package generic reads any table of foods that has one row for each food: a CSV
// or TSV file, or a sheet of an .xlsx workbook. A small mapping file that lies
// beside it says what its columns are.
//
// # The mapping file
//
// It is CSV with the header
//
//	role,column,as,unit,per,why
//
// and one row for each fact. The last column is free text. Rows about the file
// and its marks have their text in "as":
//
//	file        name of the table's file, beside the mapping file (needed)
//	title       what the table is (needed)
//	edition     its release or date (needed)
//	licence     under which its figures may be used (needed)
//	publisher, citation
//	sheet       of a workbook; else the first
//	header      number of the row with the names of the columns; else 1
//	separator   comma, semicolon or tab; else tab for .tsv and comma for others
//	decimal     point or comma; else point
//	state       measured or calculated: how its figures are known; else calculated
//	trace       a cell that means a trace, such as Tr
//	unknown     a cell that means: there, but nobody knows how much
//	missing     a cell that means: not determined; it is as if it were empty
//	below       what stands before a limit, such as <
//
// Rows about columns name them in "column" exactly as the header does:
//
//	code        code of the food (needed, once)
//	name        name of the food; "as" is its language, en if empty (needed)
//	group       group of the food; one of sipsum's own groups is understood
//	density     in the unit g/ml
//	edible      edible share, in the unit % or share
//	note        text about the food
//	value       amount of a constituent: "as" is its id in sipsum's vocabulary, or
//	            keep to keep it under the table's own name; "unit" is printed unit;
//	            "per" is 100 g or 100 ml, 100 g if empty
//	sd          standard deviation of the value column named in "as"
//	n           number of samples of the value column named in "as"
//	ignore      nothing; the column * means every column not named
//
// A mapping file in a folder or archive is called sipsum-map.csv; given by its
// own path it may have any name. The text of both files is UTF-8, or else
// Windows-1252.
//
// # Model
//
// An amount becomes the vocabulary's unit. An amount per 100 ml is divided by
// the density of its food; a food without one loses those values, and its note
// says which. A trace is at most half the last digit of its column, "< L" is
// below L, an empty cell says nothing. A zero is calculated: a file that knows
// better marks it as below a limit or as missing. Columns that the mapping file
// does not name are an error, so that none is dropped unseen; so is a figure that no
// food can have: more than 100 g of anything in 100 g, more energy than fat, or a standard
// deviation beyond √n times the mean.
//
// # Limits
//
// One row is one food: files with a row for each value, household measures,
// marks of allergens and several sheets are not read. Units are g, mg, µg (ug),
// kJ, kcal and those that a kept column prints.
package generic
