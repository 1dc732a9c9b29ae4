package allergen_test

// named is one row of a published table and what the regulation makes of it.
// The names are those of the USDA National Nutrient Database for Standard
// Reference, release 28 (a work of the US Government, in the public domain),
// quoted with their NDB numbers; a few single words name foods of other tables
// and of a bar's own. What is expected was written down from Annex II of
// Regulation (EU) No 1169/2011, the FDA's allergen guidance and the sense of the
// name, not from the rules under test.
type named struct {
	table, code, group, name string
	ours                     string // our group
	holds                    string // leaves that must be found, in the order of data/allergens.csv
	maybe                    string // leaves to be checked
	settled                  bool   // a single plain commodity: nothing else is to be expected
	cautions                 string
}

const (
	dairy   = "Dairy and Egg Products"
	spices  = "Spices and Herbs"
	fats    = "Fats and Oils"
	soups   = "Soups, Sauces, and Gravies"
	cereals = "Breakfast Cereals"
	fruits  = "Fruits and Fruit Juices"
	veg     = "Vegetables and Vegetable Products"
	nuts    = "Nut and Seed Products"
	drinks  = "Beverages"
	fishes  = "Finfish and Shellfish Products"
	legumes = "Legumes and Legume Products"
	baked   = "Baked Products"
	sweets  = "Sweets"
	grains  = "Cereal Grains and Pasta"
)

func sr(code, group, name, holds string, settled bool) named {
	return named{table: "sr", code: code, group: group, name: name, holds: holds, settled: settled}
}

func (n named) likely(codes string) named { n.maybe = codes; return n }
func (n named) warns(codes string) named  { n.cautions = codes; return n }

var srNames = []named{
	// milk, and what only sounds like it
	sr("01077", dairy, "Milk, whole, 3.25% milkfat, with added vitamin D", "cow milk", true),
	sr("01153", dairy, "Milk, canned, evaporated, with added vitamin A", "cow milk", true),
	sr("01106", dairy, "Milk, goat, fluid, with added vitamin D", "goat milk", true),
	sr("01107", dairy, "Milk, human, mature, fluid", "human milk", true),
	sr("01108", dairy, "Milk, indian buffalo, fluid", "buffalo milk", true),
	sr("01109", dairy, "Milk, sheep, fluid", "sheep milk", true),
	sr("01104", dairy, "Milk, chocolate, lowfat, with added vitamin A and vitamin D", "milk", false).likely("soya").warns("caffeine"),
	sr("01060", dairy, "Milk, filled, fluid, with lauric acid oil", "milk", false),
	sr("01076", dairy, "Milk substitutes, fluid, with lauric acid oil", "", false).likely("milk"),
	sr("43543", dairy, "Milk, imitation, non-soy", "", false).likely("milk"),
	sr("01069", dairy, "Cream substitute, powdered", "", false).likely("milk"),
	sr("01067", dairy, "Cream substitute, liquid, with hydrogenated vegetable oil and soy protein", "soya", false).likely("milk"),
	sr("01053", dairy, "Cream, fluid, heavy whipping", "cow milk", true),
	sr("01056", dairy, "Cream, sour, cultured", "cow milk", true),
	sr("01199", dairy, "Cream, half and half, fat free", "milk", false),
	sr("01001", dairy, "Butter, salted", "cow milk", true),
	sr("01112", dairy, "Whey, acid, fluid", "cow milk", true),
	sr("01116", dairy, "Yogurt, plain, whole milk, 8 grams protein per 8 ounce", "cow milk", true),
	sr("01119", dairy, "Yogurt, vanilla, low fat, 11 grams protein per 8 ounce", "milk", false),
	sr("01289", dairy, "Kefir, lowfat, plain, LIFEWAY", "milk", false),
	sr("01019", dairy, "Cheese, feta", "milk", false),
	sr("01156", dairy, "Cheese, goat, hard type", "goat milk", false),
	sr("01039", dairy, "Cheese, roquefort", "sheep milk", false),
	sr("14016", drinks, "Beverages, almond milk, sweetened, vanilla flavor, ready-to-drink", "almond", false),
	sr("14171", drinks, "Beverages, coconut milk, sweetened, fortified with calcium, vitamins A, B12, D2", "coconut", false),
	sr("14639", drinks, "Beverages, rice milk, unsweetened", "", false),
	sr("16120", legumes, "Soymilk, original and vanilla, unfortified", "soya", false),
	sr("12118", nuts, "Nuts, coconut milk, canned (liquid expressed from grated meat and water)", "coconut", true),
	sr("16098", legumes, "Peanut butter, smooth style, with salt", "peanut", false),
	sr("04501", fats, "Oil, cocoa butter", "", true),
	sr("11106", veg, "Butterbur, (fuki), raw", "", true),
	sr("11485", veg, "Squash, winter, butternut, raw", "", true),
	sr("19294", sweets, "Fruit butters, apple", "", false),
	sr("18373", baked, "Leavening agents, cream of tartar", "", false),
	sr("14130", drinks, "Carbonated beverage, cream soda", "", false),
	sr("09086", fruits, "Custard-apple, (bullock's-heart), raw", "", true),
	sr("14415", drinks, "Alcoholic beverage, liqueur, coffee with cream, 34 proof", "milk", false).warns("alcohol caffeine"),
	sr("19113", sweets, "Syrups, table blends, pancake, with butter", "milk", false),
	// egg
	sr("01123", dairy, "Egg, whole, raw, fresh", "egg", true).warns("raw egg"),
	sr("01124", dairy, "Egg, white, raw, fresh", "egg", true).warns("raw egg"),
	sr("01172", dairy, "Egg, white, raw, frozen, pasteurized", "egg", true),
	sr("01057", dairy, "Eggnog", "cow milk egg", true),
	sr("14245", drinks, "Beverages, Eggnog-flavor mix, powder, prepared with whole milk", "milk", false),
	sr("11209", veg, "Eggplant, raw", "", true),
	sr("04025", fats, "Salad dressing, mayonnaise, regular", "egg", false),
	sr("19168", sweets, "Desserts, egg custard, baked, prepared-from-recipe", "milk egg", false),
	// cereals
	sr("20073", grains, "Wheat, soft red winter", "wheat", true),
	sr("20062", grains, "Rye grain", "rye", true),
	sr("20005", grains, "Barley, pearled, raw", "barley", true),
	sr("20038", grains, "Oats", "oats", true),
	sr("20140", grains, "Spelt, uncooked", "spelt", true),
	sr("20138", grains, "Wheat, KAMUT khorasan, uncooked", "khorasan", true),
	sr("20069", grains, "Triticale", "triticale", true),
	sr("20008", grains, "Buckwheat", "buckwheat", true),
	sr("20114", grains, "Noodles, japanese, soba, dry", "wheat buckwheat", false),
	sr("20120", grains, "Pasta, dry, enriched", "wheat", false),
	sr("20091", grains, "Pasta, gluten-free, corn, dry", "", false),
	sr("20133", grains, "Rice noodles, dry", "", false),
	sr("11492", veg, "Squash, winter, spaghetti, raw", "", true),
	sr("18039", baked, "Bread, oatmeal", "oats gluten cereal", false),
	sr("14003", drinks, "Alcoholic beverage, beer, regular, all", "barley", true).likely("wheat rye oats").warns("alcohol"),
	sr("14157", drinks, "Beverages, carbonated, root beer", "", false),
	sr("14136", drinks, "Beverages, carbonated, ginger ale", "", false),
	sr("19352", sweets, "Syrups, malt", "barley", true),
	sr("14236", drinks, "Beverages, coffee substitute, cereal grain beverage, powder", "gluten cereal", false),
	// nuts
	sr("12061", nuts, "Nuts, almonds", "almond", true),
	sr("12065", nuts, "Nuts, almonds, oil roasted, without salt added", "almond", false),
	sr("12120", nuts, "Nuts, hazelnuts or filberts", "hazelnut", true),
	sr("12155", nuts, "Nuts, walnuts, english", "walnut", true),
	sr("12087", nuts, "Nuts, cashew nuts, raw", "cashew", true),
	sr("12142", nuts, "Nuts, pecans", "pecan", true),
	sr("12078", nuts, "Nuts, brazilnuts, dried, unblanched", "brazil nut", true),
	sr("12151", nuts, "Nuts, pistachio nuts, raw", "pistachio", true),
	sr("12131", nuts, "Nuts, macadamia nuts, raw", "macadamia", true),
	sr("12147", nuts, "Nuts, pine nuts, dried", "pine nut", true),
	sr("12097", nuts, "Nuts, chestnuts, european, raw, unpeeled", "chestnut", true),
	sr("11588", veg, "Waterchestnuts, chinese, (matai), raw", "", true),
	sr("12130", nuts, "Nuts, hickorynuts, dried", "other tree nut", true),
	sr("12104", nuts, "Nuts, coconut meat, raw", "coconut", true),
	sr("12135", nuts, "Nuts, mixed nuts, dry roasted, with peanuts, without salt added", "tree nut peanut", false),
	sr("12138", nuts, "Nuts, mixed nuts, oil roasted, without peanuts, without salt added", "tree nut", false),
	sr("12200", nuts, "Nuts, formulated, wheat-based, all flavors except macadamia, without salt", "wheat", false),
	sr("02025", spices, "Spices, nutmeg, ground", "", true),
	// peanut, soya, sesame, mustard, celery, lupin
	sr("16087", legumes, "Peanuts, all types, raw", "peanut", true),
	sr("16108", legumes, "Soybeans, mature seeds, raw", "soya", true),
	sr("16124", legumes, "Soy sauce made from soy (tamari)", "soya", false),
	sr("16123", legumes, "Soy sauce made from soy and wheat (shoyu)", "wheat soya", false),
	sr("04044", fats, "Oil, soybean, salad or cooking", "", true).likely("soya"),
	sr("04531", fats, "Oil, soybean lecithin", "soya", false),
	sr("12023", nuts, "Seeds, sesame seeds, whole, dried", "sesame", true),
	sr("12166", nuts, "Seeds, sesame butter, tahini, from roasted and toasted kernels (most common type)", "sesame", true),
	sr("16158", legumes, "Hummus, commercial", "sesame", false),
	sr("02024", spices, "Spices, mustard seed, ground", "mustard", true),
	sr("02046", spices, "Mustard, prepared, yellow", "mustard", false),
	sr("11274", veg, "Mustard spinach, (tendergreen), raw", "", true),
	sr("11143", veg, "Celery, raw", "celery", true),
	sr("11141", veg, "Celeriac, raw", "celery", true),
	sr("02007", spices, "Spices, celery seed", "celery", true),
	sr("02015", spices, "Spices, curry powder", "", false).likely("mustard celery"),
	sr("16076", legumes, "Lupins, mature seeds, raw", "lupin", true),
	// fish, crustaceans, molluscs
	sr("15001", fishes, "Fish, anchovy, european, raw", "fish", true),
	sr("06971", soups, "Sauce, worcestershire", "fish", false).likely("barley"),
	sr("15139", fishes, "Crustaceans, crab, blue, raw", "crustacean", true),
	sr("14187", drinks, "Beverages, Clam and tomato juice, canned", "mollusc", false),
	sr("11437", veg, "Salsify, (vegetable oyster), raw", "", true),
	sr("19177", sweets, "Gelatins, dry powder, unsweetened", "", true).likely("fish"),
	// sulphites
	sr("09032", fruits, "Apricots, dried, sulfured, uncooked", "sulphites", true),
	sr("09298", fruits, "Raisins, seedless", "", true).likely("sulphites"),
	sr("09153", fruits, "Lemon juice from concentrate, canned or bottled", "", true).likely("sulphites"),
	sr("14096", drinks, "Alcoholic beverage, wine, table, red", "", true).likely("milk egg sulphites fish").warns("alcohol"),
	sr("02069", spices, "Vinegar, balsamic", "", true).likely("sulphites"),
	// plain things
	sr("09152", fruits, "Lemon juice, raw", "", true),
	sr("09206", fruits, "Orange juice, raw", "", true),
	sr("09442", fruits, "Pomegranate juice, bottled", "", true),
	sr("09063", fruits, "Cherries, sour, red, raw", "", true),
	sr("09404", fruits, "Grapefruit juice, pink, raw", "", true).warns("grapefruit"),
	sr("11655", veg, "Carrot juice, canned", "", true),
	sr("19335", sweets, "Sugars, granulated", "", true),
	sr("19296", sweets, "Honey", "", true).warns("honey"),
	sr("09184", fruits, "Melons, honeydew, raw", "", true),
	sr("19165", sweets, "Cocoa, dry powder, unsweetened", "", true).warns("caffeine"),
	sr("02004", spices, "Spices, bay leaf", "", true),
	sr("02044", spices, "Basil, fresh", "", true),
	sr("02047", spices, "Salt, table", "", true),
	sr("02050", spices, "Vanilla extract", "", true).warns("alcohol"),
	sr("12036", nuts, "Seeds, sunflower seed kernels, dried", "", true),
	sr("14411", drinks, "Beverages, water, tap, drinking", "", true),
	sr("14209", drinks, "Beverages, coffee, brewed, prepared with tap water", "", true).warns("caffeine"),
	sr("14355", drinks, "Beverages, tea, black, brewed, prepared with tap water", "", true).warns("caffeine"),
	sr("14545", drinks, "Beverages, tea, herb, brewed, chamomile", "", true),
	sr("14551", drinks, "Alcoholic beverage, distilled, all (gin, rum, vodka, whiskey) 90 proof", "", true).warns("alcohol"),
	// mixtures that the name does not settle
	sr("14155", drinks, "Beverages, carbonated, tonic water", "", false).warns("quinine"),
	sr("14192", drinks, "Beverages, Cocoa mix, powder", "", false).likely("milk soya").warns("caffeine"),
	sr("09426", fruits, "Candied fruit", "", false).likely("sulphites"),
	sr("11118", veg, "Cabbage, kimchi", "", false).likely("fish crustacean"),
	sr("14017", drinks, "Alcoholic beverage, pina colada, prepared-from-recipe", "coconut", false).warns("alcohol"),
	sr("19120", sweets, "Candies, milk chocolate", "milk", false).likely("soya").warns("caffeine"),
	sr("19087", sweets, "Candies, white chocolate", "milk", false).likely("soya"),
	sr("43058", sweets, "Candies, hard, dietetic or low calorie (sorbitol)", "", false).warns("polyol"),
	sr("14416", drinks, "Beverages, carbonated, low calorie, cola or pepper-type, with aspartame, contains caffeine", "", false).warns("caffeine phenylalanine"),
	sr("08054", cereals, "Cereals ready-to-eat, QUAKER, 100% Natural Granola, Oats, Wheat and Honey", "wheat oats", false).warns("honey"),
}

// otherNames are foods of another table with the groups of its publisher, and
// foods of a bar's own.
var otherNames = []named{
	{table: "ifct", group: "Milk and Milk Products", name: "Paneer", holds: "milk", settled: true},
	{table: "ifct", group: "Milk and Milk Products", name: "Milk, whole, Cow", holds: "cow milk", settled: true},
	{table: "ifct", group: "Milk and Milk Products", name: "Milk, whole, Buffalo", holds: "buffalo milk", settled: true},
	{table: "ifct", group: "Egg and Egg Products", name: "Egg, poultry, white, raw", holds: "egg", settled: true, cautions: "raw egg"},
	{table: "ifct", group: "Egg and Egg Products", name: "Egg, poultry, omlet", holds: "egg"},
	{table: "ifct", group: "Fruits", name: "Pineapple", settled: true},
	{table: "ifct", group: "Fruits", name: "Raisins, dried, golden", settled: true, maybe: "sulphites"},
	{table: "ifct", group: "Mushrooms", name: "Oyster mushroom, dried", settled: true},
	{table: "ifct", group: "Nuts and Oil Seeds", name: "Gingelly seeds, white", holds: "sesame", settled: true},
	{table: "ifct", group: "Nuts and Oil Seeds", name: "Ground nut", holds: "peanut", settled: true},
	{table: "ifct", group: "Condiments and Spices", name: "Cardamom, green", settled: true},
	{table: "ifct", group: "Condiments and Spices", name: "Asafoetida", maybe: "wheat"},
	{table: "ifct", group: "Miscellaneous Foods", name: "Coconut Water", holds: "coconut", settled: true},
	{table: "ifct", group: "Edible Oils and Fats", name: "Ghee", holds: "milk", settled: true},
	{table: "ifct", group: "Marine Fish", name: "Milk fish", holds: "fish", settled: true},
	{table: "ifct", group: "Marine Shellfish", name: "Oyster", holds: "mollusc", settled: true},
	{table: "ifct", group: "Marine Mollusks", name: "Octopus", holds: "mollusc", settled: true},
	{table: "ifct", group: "Fresh Water Fish and Shellfish", name: "Prawns, small", holds: "crustacean", settled: true},
	{table: "ifct", group: "Fresh Water Fish and Shellfish", name: "Rohu", holds: "fish", settled: true},
	{table: "own", ours: "milk", name: "House blend, steamed", holds: "milk"},
	{table: "own", ours: "cream", name: "Chantilly base", holds: "milk"},
	{table: "own", ours: "cultured milk", name: "Labneh water", holds: "milk"},
	{table: "own", ours: "whey", name: "Clear liquor", holds: "milk"},
	{table: "own", ours: "egg", name: "Foamer", holds: "egg", maybe: "milk soya"},
	{table: "own", ours: "beer", name: "Saison", holds: "barley", maybe: "wheat rye oats fish", cautions: "alcohol"},
	{table: "own", ours: "wine", name: "Amber, skin contact", maybe: "milk egg sulphites fish", cautions: "alcohol"},
	{table: "own", ours: "spirit", name: "Pear eau de vie", cautions: "alcohol"},
	{table: "own", ours: "coffee drink", name: "Long black", cautions: "caffeine"},
	{table: "own", ours: "plant drink", name: "Oat drink, unsweetened", holds: "oats"},
	{table: "own", ours: "syrup", name: "Liquorice root syrup", cautions: "liquorice"},
	{table: "own", name: "Lactitol", holds: "milk", cautions: "polyol"},
	{table: "own", name: "Teriyaki", holds: "soya wheat"},
	{table: "own", name: "Malted milk", holds: "gluten cereal milk barley"},
	{table: "own", name: "Hefeweizen", holds: "wheat barley", maybe: "oats rye", cautions: "alcohol"},
	{table: "own", name: "Tocopherol of soya", holds: "soya"},
	{table: "own", name: "Soya tocopherols", holds: "soya"},
	{table: "own", name: "Tiramisu", holds: "gluten cereal milk egg"},
	{table: "own", name: "Nougat", holds: "tree nut egg", maybe: "almond hazelnut pistachio"},
	{table: "own", name: "Brioche", holds: "wheat gluten cereal milk egg"},
	{table: "own", name: "Pesto", holds: "milk", maybe: "pine nut cashew walnut"},
	{table: "own", name: "Gluten free beer", maybe: "barley"},
	{table: "own", name: "Gelatine", maybe: "fish"},
	{table: "own", name: "Gelatine of pork"},
	{table: "own", name: "Collagen", maybe: "fish"},
	{table: "own", name: "Gelato", holds: "milk", maybe: "egg soya wheat"},
	{table: "own", name: "Lecithin", maybe: "soya egg"},
	{table: "own", name: "Sunflower lecithin"},
	{table: "own", name: "Soy sauce", holds: "soya", maybe: "wheat"},
	{table: "own", name: "Shio koji", maybe: "barley wheat"},
	{table: "own", name: "Brown rice syrup", maybe: "barley"},
	{table: "own", name: "Miso", holds: "soya", maybe: "barley"},
	{table: "own", name: "Glucosamine", maybe: "crustacean"},
	{table: "own", name: "Omega 3 oil", maybe: "fish"},
	{table: "own", name: "Modified starch", maybe: "wheat"},
	{table: "own", name: "Hydrolysed vegetable protein", maybe: "soya wheat milk egg"},
	{table: "own", name: "Eiweiß", maybe: "egg"},
	{table: "own", name: "Foaming agent", maybe: "egg milk soya"},
	{table: "own", name: "Salted caramel", maybe: "milk"},
	{table: "own", name: "Praline", maybe: "almond hazelnut pecan peanut"},
	{table: "own", name: "Horchata", maybe: "almond milk"},
	{table: "own", name: "Horchata de chufa"},
	{table: "own", name: "Surimi", holds: "fish", maybe: "egg wheat crustacean"},
	{table: "own", name: "Bloody Mary mix", maybe: "celery fish"},
	{table: "own", name: "Vegetable stock", maybe: "celery"},
	{table: "own", name: "Nut flavouring", maybe: "tree nut"},
	{table: "own", name: "Caramel colour E150d", maybe: "sulphites"},
	{table: "own", name: "Lemon squash", maybe: "sulphites"},
	{table: "own", name: "Squash, winter, butternut"},
	{table: "own", name: "Pale ale", holds: "barley", maybe: "wheat oats rye", cautions: "alcohol"},
	{table: "own", name: "Coffee creamer", maybe: "milk", cautions: "caffeine"},
	{table: "own", name: "Wasabi paste", maybe: "mustard"},
	{table: "own", name: "Sour mix", maybe: "egg"},
	{table: "own", name: "Boza", maybe: "wheat barley rye"},
	{table: "own", name: "Cider", maybe: "egg milk sulphites fish"},
	{table: "own", name: "Cider vinegar"},
	{table: "own", name: "Egg, free range", holds: "egg"},
	{table: "own", name: "Egg-free mayonnaise"},
	{table: "own", name: "Shortbread", holds: "gluten cereal"},
}
