// Package stfcj reads the workbooks of the Standard Tables of Food Composition
// in Japan 2020 (eighth revised edition), as the ministry publishes them.
//
// # Model
//
// The main table is a workbook (.xlsx) with a sheet for each food group. Three
// more workbooks may lie beside it: organic acids, carbohydrates (single sugars,
// starch, sorbitol and mannitol) and fatty acids. Workbooks are recognised by
// their columns, not by their names; another part of the table, such as the amino
// acids, is left alone, and a workbook without such columns is an error.
//
// A sheet begins with some ten header rows of merged cells. One row, marked
// 成分識別子, names the columns by their component identifiers, most of them
// INFOODS tagnames; a row marked 単位 holds the units, each for its own column
// and the empty ones to its right. Every row below is a food: group, five-digit
// code with its leading zero, index number, name, values per 100 g edible part,
// remarks. An annex repeats its foods group by group behind a sheet 表全体, which
// is the one that is read. data/maps/stfcj.csv maps the columns,
// data/maps/stfcj_columns.csv has their names, units and decimals; a unit that
// differs from the workbook's is an error.
//
// A cell is a number (as a number or as text, digits full-width or not), in
// parentheses if it was estimated from other tables, recipes or the literature,
// or a sign:
//
//	1.9      measured; calculated where the column is computed from others
//	(1.9)    calculated
//	0        below a tenth of the least amount printed (three tenths for iodine,
//	         selenium, chromium, molybdenum and biotin), or not found
//	(0)      assumed to be zero
//	Tr (Tr)  trace: less than half of the least amount printed
//	- *      nobody measured, or explained elsewhere: no value
//
// Some cells get their parentheses from their number format only; they are read as
// shown. Known misprints of the publisher (data/maps/stfcj_misprints.csv) become
// unknown. The dagger after a number says that an official method was used, and is left
// out. CHOAVLM is in monosaccharide equivalents: white sugar has 104.2 g in 100
// g. It is a figure of its own; CHOAVL is the mass.
//
// The refuse in % gives the edible share. Remarks give a density where "100 g：97
// mL、100 mL：103 g" is written, and amounts of caffeine, tannins, theobromine,
// polyphenols, nitrate and (in the annex of acids) pyruvic acid in g; the
// reference of such a value says so. The remarks stand in the note as well.
//
// Where the main table and an annex have the same column, the main table's value
// stands, even if the annex, which was published a year later, has another.
//
// # Source
//
// 文部科学省 科学技術・学術審議会 資源調査分科会 (2020) 日本食品標準成分表2020年版（八訂）
// [Standard Tables of Food Composition in Japan 2020, eighth revised edition].
// Ministry of Education, Culture, Sports, Science and Technology, Tokyo. The
// ministry's terms let figures be used freely with the source named, compatible
// with CC BY 4.0. Meaning of the signs: explanation of the table, chapter 1.
//
// # Limits
//
// Names are Japanese: the workbooks have no others. Where the two halves of a
// density remark contradict each other (olive oil: 200 mL and 91 g) no density is
// taken. A density of flour or powder is that of the loose powder. Alcohol in %
// by volume, isomaltose and other remarks stay text. Single values cannot be told
// analysed from borrowed where the publisher writes no parentheses. The tables of
// amino acids are not read. A workbook that was cut between two rows and saved
// again cannot be told from a whole one.
package stfcj
