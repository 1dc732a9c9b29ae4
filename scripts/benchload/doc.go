// Command benchload writes an invented release in the shape of FoodData Central
// for measuring loads: as many foods and values as asked for, in the disorder of
// the published files. The same arguments give the same bytes.
//
//	go run ./scripts/benchload -foods 2000000 -values 25000000 -out DIR
//
// Foods are labels but for every hundredth, which has the many values of an
// analysed food. Nutrients are shuffled within a food; one food in twenty is in
// two places of food_nutrient.csv; foods do not come in the order of food.csv.
//
// # Limits
//
// The texts repeat themselves and the amounts are drawn evenly, so a file shrinks and
// sorts better than the agency's; it says how long a load takes, not what is in it.
package main
