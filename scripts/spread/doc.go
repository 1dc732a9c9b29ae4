// Command spread writes data/spread.csv, the relative standard deviation that a value has
// when its own source states none, and data/anywhere.csv, how far what any food of a name
// has, wherever it is bought, lies from the figure of one source.
//
//	go run ./scripts/spread --tables FOLDER [--check | --report]
//
// --report prints how far the intervals hold what tables print that they know nothing of.
//
// # A food of the name
//
// The evidence of data/anywhere.csv is the core table beside national tables: Ciqual, the
// Swiss, the Australian and the Indian one, food by food where data/crosswalk.csv says that
// it is the same (match A), as bought and not at the same water. What one took from the
// other is left out: rows alike in most digits, figures alike in three, core figures that
// cite that table. Rounding of both is allowed for. A column of which half the foods lie more
// than three times off is of another quantity than its name says and is left out whole: the
// Indian malic acid (a banana with 4 mg, a strawberry with 3, a plum with a tenth of everyone
// else's), the Australian cryptoxanthin. Of the other Indian acids figures that lie
// more than five times off are left out: its strawberry has 0.1 mg of citric acid. Japan's
// is kept back for acceptance: it marks its own analyses, so what it took from others can be
// left out cell by cell.
//
// A row is the least deviation σ of a lognormal number whose middle 90 % hold a share of the
// comparisons (kinds.go: from 82 % of proximates to 95 % of vitamins; folds then
// hold 86 to 91 % of a table that was left out), each food counting once. Such a number has
// its median σ²/2 below its mean, which is counted. What n foods show of the next one is less
// sure than that: σ is taken further by Student's limit with n − 1 degrees of freedom, and
// √(1 + 1/n) (Hahn and Meeker 1991, Statistical Intervals, 4.2). A class of foods takes what its own
// foods show and, by n/(n + 8), what its kind of constituents shows in that class; with
// few foods beyond the level the inner three quarters tell. A class of which fewer than six
// foods were compared has no row; there data/spread.csv stands. Vegetables and leaves take
// what fruits show of acids.
//
// The tails are heavier than lognormal ones (estimate.Input, Tail): the middle 90 % are
// 3.1 to 3.4 times as wide as the middle half, not 2.4. One number, the median of all
// constituents and classes of twenty foods, of figures as printed.
//
// # Within one source
//
// The evidence of data/spread.csv is what SR28 says of values that do state their spread: rows that
// were analysed with three or more data points and a standard error. The
// relative deviation of such a row is
//
//	r = max(SE·√n, h/√3) / amount
//
// with h half of the last decimal of its column. Rows below twenty times h are
// left out, since their spread is mostly rounding; so are rows that contradict
// themselves: no sample of n values between Min and Max has a deviation above
// (Max − Min)/2·√(n/(n−1)), but one row in twelve claims it, where the standard
// error belongs to fewer means than there are data points.
//
// Within a source, the spread of a class is the 70 % quantile of r. The median
// would cover too little: half of the rows spread wider, and what they lose is more
// than the others win. If ln r is normal with standard deviation s, the value at
// which 90 % intervals hold 90 % of samples, averaged over rows, is the 68 %
// quantile for s = 0.6, the 71 % for 0.8 and the 74 % for 1.0: the classes of SR28
// lie there. The evidence column prints the median of r beside it, and the median
// that Min and Max imply by the range divisor d₂(n).
//
// Between sources (between_sd) there is more: r describes lots of one country,
// crops, breeds and methods of another lie further off. SR28 cannot tell how far,
// so this part is a calibration, one number k for a class, in medians of r:
//
//	between² = (k · median r)²      default² = (70 % quantile of r)² + between²
//
// k is 1.5 for macronutrients and 0.75 for minerals and all others. There the inner
// half of the intervals of the core table holds about half of what other countries'
// tables print of the same foods (data/crosscheck_test.go); the tails are heavier
// than lognormal ones, so that the 90 % intervals hold four cells of five. For
// sugars k is 0.2. The comparison asks for more (the inner half holds 43 %), but
// then most of their intervals would be wider than ± 25 %; the misses are judged
// one by one instead. The purity of refined sugar is standardised (Codex CXS
// 212-1999): there k is 0.
//
// Each constituent gets a row for all drink foods (every group but "other"), and
// one for each group, or family of like groups, that has twelve rows or more.
// Constituents with fewer than thirty rows take the pool of their class. Water in
// dry foods and in others are told apart, and the fat of dairy foods leaves skimmed
// ones out. Fatty-acid classes, whose sums SR28 calculates, take the spread of
// their main fatty acid. SR28 has no acids, chlorogenic acids or trigonelline: these
// come from literature.csv, published deviations, or ranges divided by d₂(n), of
// samples of different lots; the default is the median of the rows, and a range
// without its mean is related to its middle. Where both exist the literature wins:
// it compares lots and makers, SR28 often the means of a few, and between_sd is 0.
//
// # Limits
//
// Cells of fewer than twenty foods rest mostly on their kind. Of acids two tables speak: with
// one left out the other's citric acid speaks for all. Where sources lie four times
// apart (saturated fat of fruits, vitamin K) no lognormal interval about a mean reaches.
// r describes samples of one food as bought in one country, with the laboratory's
// own error inside. k now only says how far the figures of one row may contradict each other. A value
// borrowed for another variety is worse. Refined sugars and water rest on few rows,
// for salt SR28 has none: see the evidence column. Literature rows of servings carry
// the spread of the serving's size.
package main
