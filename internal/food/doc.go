// Package food is a food of a table, as published, and what it becomes when it
// enters the ledger.
//
// # Model
//
// A Food holds what its table prints, per 100 g edible part, with the state of
// each value. Enter turns it into a Profile: one cell for every constituent of
// the vocabulary, in grams per gram of food, either known (with a spread) or
// unknown (with the most it could be). In this order:
//
//  1. fill: what the food does not state is borrowed from a lender, marked, and
//     scaled down where borrowed parts would exceed a total the food states; it keeps the
//     spread and the draws that the lender has of it, being of any food of the lender's name;
//     the core table borrows within itself too: a dark roast has the potassium of
//     the medium one, is marked so, and draws it with the medium one's draws;
//
//  2. derive: data/derive.csv brings conventions to one form (salt to sodium,
//     monosaccharide equivalents to mass, nitrogen to protein);
//
//  3. zeros: data/bounds.csv knows, with a source, what does not occur in a food
//     group; an absent value is then an assumed zero. What is added on purpose (sulphur
//     dioxide, quinine, sweeteners) is not assumed to be missing in a food whose name
//     speaks of it (columns words and unless), nor in one without a group;
//
//     kin: a food with a total of organic acids and no split of it has the shares of its
//     botanical kin (data/kins.csv by group and name, data/kin_shares.csv), marked ByKin;
//     what is measured stands, and the others take no more than the total leaves, if that
//     is more than the total's own standard deviation. Of a titratable acidity alone the
//     total is what acids of the kin it takes, and it counts once (acidity). An acid that
//     no row of the kin holds is bounded. Shares are drawn together and add up to the total
//     of the draw (Dirichlet);
//
//  4. balance: every parent equals the sum of its parts. What a published total
//     has beyond its known parts is a rest ("SUGAR-other"). Where a table has
//     carbohydrate by difference only, available carbohydrate is
//
//     CHOAVL = CHOCDF − FIBTG − POLYL − OA
//
//     and its unexplained part is CHOAVL-other. No part is more than its whole
//     (excess.go). Where parts are published as more than a total by difference
//     (the lactose of milk), they make it; a total that was measured and its parts
//     meet, each by its variance, or where more than two standard deviations of
//     both lie between them the parts make it. Parts that are nothing but limits are
//     within the limit of their total. WATER, where nobody states it, is 100 − the
//     known proximates, and no more than a known rider leaves; but where fat, protein or
//     carbohydrate is not known either it is unknown, and no more than that. What 100 g have beyond
//     all known parts is MASS-other. More than 100 g are scaled to 100 g; where each part
//     was measured for itself the water gives way first, as far as two standard deviations
//     of it. If more than two standard deviations too much, what is not water is lowered to
//     what the water leaves;
//
//  5. spread: the published standard deviation (SE·√n is one), else range/d₂(n),
//     joined by what lies between the samples of one source and those of another
//     (data/spread.csv, between_sd: sd² = own² + between²); else the class default
//     of data/spread.csv, which is also the floor when one to five samples were
//     analysed. A stated sd without n stands; a range without n is read as
//     rectangular, (high − low)/√12. A rest takes what makes
//     the parent's own published variance come out, sd² = sd(parent)² − Σ
//     sd(part)², at most itself; where the parts leave nothing of it, the class
//     default. A carbohydrate by difference is as sure as what it is the difference
//     of, and a class default of a carbohydrate that is far wider than all that
//     stands beside it is taken down to that. Total sugars, fat and other totals that are measurements keep their
//     own spread (Profile.Totals): the stated one, or the class default where the
//     parts, each by itself, would add up to more;
//
//  6. bound: the most an unknown could be, which is the least of what the row's own
//     balance leaves (over the totals above it, the rests in which it can hide plus
//     two standard deviations), what a published titratable acidity or pH and the
//     metals allow of an acid (acidroom.go), what a published work found at most in foods of
//     its name (rule below), a factor of another value (phosphate ≤ 3.066 P), the highest
//     value published in its group, the most that the law allows
//     in it (rule allowed), and the bound of its own total. Without any of these nothing is known.
//
//  7. widen: until here the figures of a row are held against each other. What is printed is
//     of any food of the name, wherever it is bought: every figure of a table takes the
//     spread of data/anywhere.csv if its own is less, water of the lesser of water and solids,
//     and so does a total, whatever its parts add up to. A food in hand (table own) and a pure
//     substance keep their own. A name that states a strength fixes the alcohol to what a label
//     may be off (data/strength_tolerances.csv).
//
// Trace and below-limit values are uniform between zero and their limit.
//
// A bought juice concentrate counts as a juice that has lost water (data/concentrates.csv,
// Profile.WaterGone): how much of its sugars is added hangs on the drink.
//
// What is true of a whole group of foods (that it pours, comes of animals, curdles, is
// the dose of a brew …) is a column of data/groups.csv and a field of Group; no list of
// groups stands in code.
//
// # Limits
//
// Values of one food are drawn independently before the mass is closed, so the
// analysts' own correlations (a sweeter lot of fruit has less acid) are missing,
// but for totals that are measured. What lies between sources is one number by
// class and no more than a calibration (scripts/spread); what is known of a food by its name alone is data/anywhere.csv.
// A split tells what such fruit holds, not what this one does: an acid that sets a cultivar
// apart from its kin is not in it. Bounds by group reach only as far as the core table's own literature.
package food
