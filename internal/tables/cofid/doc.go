// Package cofid reads the Composition of Foods Integrated Dataset, the tables of
// "McCance and Widdowson's The Composition of Foods" that Public Health England
// published as one workbook, or the sheets of that workbook saved as CSV files.
//
// # Model
//
// Each sheet holds one kind of constituent and lists the foods again. A sheet
// belongs to the table if one of its first rows has the cell "Food Name"; the
// column before it holds the code ("14-331") even where its own header is empty.
// A header cell is a name and its unit, "Total sugars (g)"; rows below it
// without a code (the publisher's short names) are passed over. Columns are known
// by their name in small letters with dashes (data/maps/cofid.csv), and the
// unit is read from the header. A column that the map does not know, because its
// sheet was not seen, is kept under cofid: and that name; if two sheets have the
// name, the later gets the name of its sheet before it.
//
// The sheet with the column "Water (g)" leads and gives the order of the foods.
// A food that stands on another sheet only comes after them.
//
// Values are per 100 g edible part. A number is calculated, since the workbook
// does not mark which were analysed. Tr is a trace, of at most half the last
// digit of its column; "< 0.1" is below that limit; N is present but not
// known (unknown); an empty cell says nothing.
//
// Alcoholic drinks (groups that begin with Q) are printed per 100 ml. They are
// divided by the specific gravity of the sheet of factors; without it their
// values are left out, and the note says so. Columns and sheets per 100 g of
// fatty acids are kept as printed.
//
// Carbohydrate, starch and sugars are printed in monosaccharide equivalents:
// CHOAVLM, STARCHM, SUGARM and LACSM in the vocabulary, and sucrose and maltose
// times 0.95, the ratio of their molar mass to that of two monosaccharides.
//
// The edible proportion and the specific gravity become the food's own; other
// cells without a unit go into its note.
//
// Licence: Open Government Licence v3.0. Citation: Public Health England (2021)
// McCance and Widdowson's The Composition of Foods Integrated Dataset.
//
// # Limits
//
// The workbook itself was not seen. The names of the columns of Proximates,
// Inorganics, Vitamins and part of Vitamin fractions, the codes Tr and N and the
// shape of the header were read from published excerpts; the sheets of organic
// acids and phytosterols, the names of the columns of factors, the rule of 100 ml
// for groups Q and the equivalents of single sugars are from memory. Rows in
// testdata are of our own making. All sheets are held in memory. The main data
// references of a food are kept as text in its note.
package cofid
