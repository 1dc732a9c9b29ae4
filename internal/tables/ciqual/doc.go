// Package ciqual reads the French food composition table Ciqual of Anses, the
// agency for food, environmental and occupational health and safety.
//
// # Model
//
// The publisher gives a workbook (.xls) and a set of XML files; the reader takes
// one of two folders:
//
//   - the workbook saved as .xlsx or as .csv with ";", in UTF-8 or Windows-1252:
//     one row a food, three levels of group, the code, the French name, the
//     scientific name, and one column a constituent, named in French with its
//     unit. Blanks in headings are folded, since two of 2020 hold two in a row.
//     alim*.xml beside it gives the English names;
//   - the XML set: alim*.xml (foods) and compo*.xml (values), and beside them, if
//     there, alim_grp*.xml (names of groups) and const*.xml (headings, which must
//     be those known here). Texts are padded with blanks, the case of tags varies
//     and "<" may stand in a text.
//
// Codes are whole numbers; a spreadsheet may have made 25606.0 of one. A code
// that the publisher is known to print twice (data/maps/ciqual_duplicates.csv)
// is kept as "code~2" with a note; any other is an error. English names come
// first where there are any.
//
// Values are per 100 g edible part:
//
//	9,05     a figure; the decimal sign is a comma (a point is taken too)
//	< 0,5    below; the limit is 0.5; for "< 0", rounded to nothing, as for traces
//	traces   trace; the limit is half the last digit that its column commonly
//	         prints (data/maps/ciqual_columns.csv), for the publisher states none
//	- or nothing   not determined: there is no value
//
// A figure is calculated: the agency compiles analyses, papers, recipes and
// foreign tables into one and the workbook does not say which (its page on data
// sources). In the XML set the confidence code A to D is the grade of the work
// that a value names, and min and max are its range.
//
// The column "Glucides" holds polyols too: pears print carbohydrate 10.9, sugars
// 9.01, polyols 1.89. CHOAVL is that column less the polyols printed beside it,
// and says so in its Ref. Polyols below a limit or in traces make a range of it,
// and where none are printed it stands as it is, at most too large by them.
//
// Licence: Licence Ouverte of Etalab (from memory). Citation, as the agency asks:
// "Anses. 2020. Ciqual French food composition table."
//
// # Limits
//
// The .xls itself is not read. The release is recognised by its counts of foods
// and columns (data/editions.csv). The layout of compo.xml was not
// seen in the publisher's file: its fields (alim_code, const_code, teneur, min,
// max, code_confiance, source_code) are from descriptions of it, and its test
// uses rows of our own making; the file is read whole before the first food.
// sources.xml is not read; source codes stand in the Ref. The column of vitamin
// E does not say what it counts and is kept under its own number, as are single
// fatty acids, vitamin K2 and the second energy and protein.
package ciqual
