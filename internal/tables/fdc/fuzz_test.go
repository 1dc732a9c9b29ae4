package fdc

import (
	"context"
	"testing"
	"testing/fstest"

	"sipsum/internal/tables/tablestest"
)

// FuzzFDC reads a release whose foods, values, labels and portions are any
// bytes: it must end, give only legal values, and refuse with a file.
func FuzzFDC(f *testing.F) {
	units := tablestest.Bytes(f, trimmed, unitFile)
	nutrients := []byte("id,name,unit_name,nutrient_nbr\n1003,Protein,G,203\n1010,Sucrose,G,210\n1032,Citric acid,MG,236\n9999,Invented,MG,\n")
	const values = "id,fdc_id,nutrient_id,amount,data_points,derivation_id,min,max,loq,footnote\n1,5,1010,1.26,4,1.0,1.2,1.31,,\n2,5,203,0,2,68,,,0.5,\"so, so\"\n"
	f.Add([]byte("fdc_id,data_type,description\n5,branded_food,x\n"), []byte(values), tablestest.Bytes(f, trimmed, brandedFile), tablestest.Bytes(f, trimmed, portionFile))
	f.Add([]byte("fdc_id,data_type,description,publication_date\n5,sr_legacy_food,x,2030-01-01\n6,sample_food,y,\n5,sr_legacy_food,x,2030-01-01\n"), []byte(values+"3,5,1010,9,,,,,,\n4,6,1010,1,,,,,,\n"), []byte("fdc_id,brand_owner,gtin_upc\n"), []byte("fdc_id,measure_unit_id,gram_weight\n"))
	f.Add([]byte(""), []byte(values), []byte("fdc_id,brand_owner,gtin_upc\n5,\"x\n\",1\n"), []byte("fdc_id,measure_unit_id,gram_weight\n5,9999,3\n"))
	f.Add([]byte("fdc_id,data_type,description\n5,,\"\n"), []byte("fdc_id,nutrient_id,amount\n5,1010,\x00\n"), []byte("\xef\xbb\xbffdc_id"), []byte("\r\n"))
	f.Fuzz(func(t *testing.T, foods, values, labels, portions []byte) {
		files := fstest.MapFS{nutrientFile: {Data: nutrients}, unitFile: {Data: units}, valueFile: {Data: values}, brandedFile: {Data: labels}, portionFile: {Data: portions}}
		if len(foods) > 0 {
			files[foodFile] = &fstest.MapFile{Data: foods}
		}
		release, err := open(context.Background(), files, "fuzz", "", len(values)/2)
		tablestest.Legal(t, release, err)
	})
}

// FuzzFDCJSON does the same for the JSON release.
func FuzzFDCJSON(f *testing.F) {
	f.Add([]byte(`{"FoundationFoods": [{"fdcId": 1, "description": "x", "foodNutrients": [{"nutrient": {"id": 1010, "name": "a", "unitName": "g"}, "amount": 0, "dataPoints": 2}]}]}`))
	f.Add([]byte(`{"FoundationFoods": [{}, 1, null`))
	f.Fuzz(func(t *testing.T, content []byte) {
		release, err := open(context.Background(), fstest.MapFS{"f.json": {Data: content}}, "fuzz", "", maxHeld)
		tablestest.Legal(t, release, err)
	})
}
