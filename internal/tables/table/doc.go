// Package table says what a reader of a published food-composition table gives:
// a Release, and what all readers share: the map of its columns to the
// vocabulary, the rules that give a food its group, and the hash of its files.
//
// # Model
//
// A Format knows how to open a folder of the publisher's files, unchanged. Open
// reads the small files (columns, codes, groups) and gives a Release whose
// foods come as a stream, in the publisher's order, each with all its values;
// the stream never holds more than one food. The first error ends it.
//
// A column of the table is mapped to a constituent of the vocabulary with the
// factor from the printed unit, or kept under "table:number" in the printed
// unit, or it holds the standard deviation of another column, or it is refused
// by name (codes, names, counts, sums that are not totals). The choice is a row
// of data/maps/<format>.csv with its reason; no column is dropped unnamed.
//
// A food's group is the first rule of data/group_rules.csv that fits its table
// format, the publisher's group and the words of its name.
//
// Files come as a folder, a .zip archive or one file (Files), and rows as CSV
// (Rows) or as a sheet of an .xlsx workbook (Workbook). Both name file, line and
// column of a fault; in a workbook these are the row and column of the cell, and
// the fault also names sheet and cell as the spreadsheet shows them. Archives
// and workbooks are foreign data: names that lead outside, links, encrypted
// files, too many files, bytes or blank rows, and texts longer than a cell can
// hold are refused before they cost memory or time.
//
// Western reads files that are Windows-1252 or UTF-8, whichever they turn out to
// be. Cells is the same view of a CSV file and of a sheet, for tables whose
// header is not their first row; LastDigits tells to which decimal a column is
// printed, of which half is the most that a trace can be where the publisher
// states no limit.
//
// What readers do alike is done here: Opening finds the files of a path, Stream
// gives the foods that a reader reads one by one, and NewFood and NewValue begin
// with nothing stated.
//
// # Limits
//
// A workbook is read strictly, so that a damaged one never gives a part of its
// rows: the program that wrote it must have ended every element, numbered rows
// and cells upwards and kept every shared string. Number formats are told but
// not applied; dates, hidden rows, merged areas and comments are not interpreted. A workbook may pack 128
// MiB and unpack to 256 MiB.
//
// The hash covers the names and bytes of the publisher's files that are read,
// not the map: after a change of a map a table is loaded again by force. Files
// that change between the hash and the reading are not noticed.
package table
