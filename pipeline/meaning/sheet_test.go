package meaning

import (
	"testing"
)

// TestSheets reads small tables as a captain's book has them: what a record is, what its
// columns are, what is kept by name.
func TestSheets(t *testing.T) {
	for _, c := range sheetCases {
		if got := summary(planOf(t, c.name, c.rows)); got != c.want {
			t.Errorf("%s:\n got      %s\n expected %s", c.what, got, c.want)
		}
	}
}

var sheetCases = []struct{ what, name, rows, want string }{
	{"trips", "Sheet1", "Trip|Date|Skipper|Port\n1|2026-06-03|Ansa|Hollin Quay", "trips: trip date captain port"},
	{"legs with lines out as times", "", "Date|Lines in|Lines out|Speed\n2026-06-03|06:10|16:40|12",
		"legs: date start_s end_s speed_kn"},
	{"legs with lines out as counts", "", "Date|Start|Stop|Lines out\n2026-06-03|06:10|16:40|4",
		"legs: date start_s end_s lines_out"},
	{"what was on a line that was hit", "", "Date|Time|Line|What on it|Outcome\n" +
		"2026-06-03|06:10|left|cedar plug|landed",
		"strikes: date time_s line lure outcome"},
	{"lines out as bare times", "", "Date|Lines in|Lines out\n2026-06-03|610|1640\n2026-06-04|600|900",
		"legs: date start_s end_s"},
	{"back as a time", "", "Trip|Date|Depart|Back\n1|2026-06-03|05:00|16:40", "trips: trip date depart_s return_s"},
	{"back as a distance", "", "Trip|Rod|Lure|Back\n1|2|Cope|100\n1|3|Cope|150", "lines: trip line lure setback_m"},
	{"weight of a lure", "", "Trip|Line|Lure|Weight|Setback\n1|2|Cope|8|60",
		"lines: trip line lure lure_weight_g setback_m"},
	{"weight of lure and fish", "", "Date|Start|End|Lure|Weight|Fish|Weight\n2026-06-03|06:00|08:00|Cope|8|Wahoo|34",
		"flat: date start_s end_s lure lure_weight_g species scale_kg"},
	{"weight of lure and fish by unit", "", "Date|Start|End|Fish|Wt lb|Lure|Wt " +
		"oz\n2026-06-03|06:00|08:00|Wahoo|34|Cope|8", "flat: date start_s end_s species scale_kg/lb lure " +
		"lure_weight_g/oz"},
	{"weight of lure by the cells' units", "", "Date|Start|End|Lure|Colour|Wt\n2026-06-03|06:00|08:00|Cope|pink|8 oz",
		"flat: date start_s end_s lure colour lure_weight_g"},
	{"weight in a weigh-in book with lures", "", "Date|Angler|Lure|Weight (lb)|Fish\n2026-06-03|Ansa|Cope|88|Wahoo",
		"fish: date angler lure scale_kg/lb species"},
	{"fish counted", "", "Date|Hours|Rods|Fish\n2026-06-03|4|5|2", "flat: date duration_s/h lines_out landed_n"},
	{"fish named", "", "Date|Fish|Length\n2026-06-03|Wahoo|44", "fish: date species length_cm"},
	{"strikes with their number", "", "Trip|Strike|Time|Outcome\n1|1|06:40|lost",
		"strikes: trip strike time_s outcome"},
	{"bites as times", "Bites", "Trip|Bite|Fish|Rod\n1|06:40|Wahoo|2", "strikes: trip time_s species line"},
	{"the trip's hours are no effort", "", "Date|Captain|Depart|Return|Hours\n2026-06-03|Ansa|05:00|15:00|10",
		"trips: date captain depart_s return_s ?Hours"},
	{"hours trolled are", "", "Date|Depart|Return|Hours trolled|Speed\n2026-06-03|05:00|15:00|6|12",
		"legs: date ?Depart ?Return duration_s/h speed_kn"},
	{"position of the boat", "", "Date|Start|End|Position\n2026-06-03|06:00|08:00|32 15.2N 127 30.1W",
		"legs: date start_s end_s lat"},
	{"position of a line", "", "Trip|Position|Lure|Drag\n1|long left|Cope|18", "lines: trip line lure drag_kg"},
	{"day of the month is a date, day of the trip a name", "", "Day|Start|End\n1|06:00|08:00\n2|06:00|08:00",
		"legs: trip start_s end_s"},
	{"two headings for one quantity", "", "Date|Weight|Scale weight|Fish\n2026-06-03|40|38|Wahoo",
		"fish: date ?Weight scale_kg species"},
	{"the plainest name of two", "", "Kind|Date|Species|Length\nlong|2026-06-03|Wahoo|112",
		"fish: ?Kind date species length_cm"},
	{"an estimate is no scale's", "", "Date|Fish|Weight (est)|Length\n2026-06-03|Wahoo|40|44",
		"fish: date species ?Weight (est) length_cm"},
	{"nor is one that was worked out", "", "Date|Fish|Length cm|Peso calculado kg|Peso kg\n" +
		"2026-06-03|Wahoo|112|9|8.4\n2026-06-04|Wahoo|121|11|11.7",
		"fish: date species length_cm/cm ?Peso calculado kg scale_kg/kg"},
	{"nor are those of the girth rule", "", "Date|Fish|Length in|Girth in|Weight lb\n2026-06-03|Wahoo|44|19|20\n" +
		"2026-06-04|Wahoo|51|20.5|27\n2026-06-05|Tuna|36|24|26\n2026-06-05|Tuna|40|26|34\n2026-06-06|Tuna|38|25|30",
		"fish: date species length_cm/in girth_cm/in ?Weight lb"},
	{"a scale's are near it", "", "Date|Fish|Length in|Girth in|Weight lb\n2026-06-03|Wahoo|44|19|20\n" +
		"2026-06-04|Wahoo|51|20.5|25\n2026-06-05|Tuna|36|24|27\n2026-06-05|Tuna|40|26|34\n2026-06-06|Tuna|38|25|31",
		"fish: date species length_cm/in girth_cm/in scale_kg/lb"},
	{"a number that is several fish's is of the outing", "", "Nr|Fisch|Stück|Länge cm\n" +
		"1|Thun|1|88\n2|Thun|2|\n2|Bonito|1|51\n" +
		"4|Thun|1|90\n4|Thun|1|\n5|Bonito|3|\n7|Thun|1|91\n8|Bonito|1|49\n8|Thun|1|86",
		"fish: trip species count length_cm/cm"},
	{"header on row 7", "", "My log|\n|\nby me|\n|\n|\n|\nDate|Start|End\n2026-06-03|06:00|08:00",
		"legs: date start_s end_s"},
	{"group over name", "", "Date|Lines||Fish|\n|In|Out|Species|Length (in)\n2026-06-03|06:00|08:00|Wahoo|44",
		"flat: date start_s end_s species length_cm/in"},
	{"name over unit", "", "Date|Fish|Length|Weight\n||cm|kg\n2026-06-03|Wahoo|112|14",
		"fish: date species length_cm/cm scale_kg/kg"},
	{"title over header", "", "Fish|||\nDate|Species|Length|Weight\n2026-06-03|Wahoo|112|14",
		"fish: date species length_cm scale_kg"},
	{"data under a header is no second header", "", "Species|Kept|Length\nWahoo|kept|fork\nWahoo|kept|44",
		"fish: species kept length_cm"},
	{"a time span in one cell", "", "Date|Time|Speed\n2026-06-03|0610-0755|12\n2026-06-03|8:00 - 9:30|12",
		"legs: date stretches speed_kn"},
	{"line in and line out as times", "", "Date|Line in|Line out\n2026-06-03|06:10|07:55\n2026-06-03|08:10|09:55",
		"legs: date start_s end_s"},
	{"caught on a day", "", "Species|Caught on|Length\nWahoo|2026-06-03|112", "fish: species date length_cm"},
	{"caught on a lure", "", "Species|Caught on|Length|Date\nWahoo|Cope|112|2026-06-03",
		"fish: species lure length_cm date"},
	{"two texts in one column", "", "Trip|Line|Lure/colour|Drag\n1|2|Cope blue|18", "lines: trip line lure drag_kg"},
	{"when as days", "", "When|Fish|Long\n1/18/25|Wahoo|5' 4\"\n1/25/25|Wahoo|4'9\"", "fish: date species length_cm"},
	{"when as times", "", "Trip|When|Fish|Outcome\n1|06:40|Wahoo|lost\n1|07:40|Wahoo|lost",
		"strikes: trip time_s species outcome"},
	{"long is a longitude", "", "Date|Start|End|Lat|Long\n2026-06-03|06:00|08:00|32.25|-117.5",
		"legs: date start_s end_s lat lon"},
	{"degrees and minutes without a hemisphere", "", "Date|Start|End|Lat|Long\n2026-06-03|06:00|08:00|28 10.5|88 22.0",
		"legs: date start_s end_s ?Lat ?Long"},
	{"degrees and minutes under one", "", "Date|Start|End|Lat N|Long W\n2026-06-03|06:00|08:00|28 10.5|88 22.0",
		"legs: date start_s end_s lat lon"},
	{"days without a year", "", "Day|Start|End|Speed\n3-Jul|06:00|08:00|8\n4-Jul|06:00|08:00|8",
		"legs: date start_s end_s speed_kn"},
	{"a trip's number under Day", "", "Day|Start|End\nDay 1|06:00|08:00\nday 2|06:00|08:00",
		"legs: trip start_s end_s"},
	{"days that are no dates", "", "Day|Start|End|Speed\n3rd|06:00|08:00|8\n4th|06:00|08:00|8",
		"legs: trip start_s end_s speed_kn"},
	{"weekdays beside a date", "", "Date|Day|Start|End\n2026-07-04|Sat|06:00|08:00\n2026-07-05|Sun|06:00|08:00",
		"legs: date ?Day start_s end_s"},
	{"a lure in a column for each place", "", "Date|In|Out|Kts|Port long|Stbd " +
		"short|Shotgun\n2026-07-04|06:00|08:00|8|Blue tube|Black jet|\n2026-07-05|06:00|08:00|8|Blue tube|Black " +
		"jet|Bird", "flat: date start_s end_s speed_kn/kn ?Port long ?Stbd short ?Shotgun"},
	{"where a strike was in the spread", "", "Date|Time|Where|Fish|Result\n2026-07-04|06:40|short " +
		"corner|Wahoo|lost\n2026-07-04|07:40|stinger|Wahoo|boated", "strikes: date time_s line species outcome"},
	{"a ground called as a place in the spread", "",
		"Date|In|Out|Where\n2026-07-04|06:00|08:00|corner\n2026-07-05|06:00|08:00|outside corner",
		"legs: date start_s end_s area"},
	{"where a leg was", "", "Date|In|Out|Where\n2026-07-04|06:00|08:00|the ledge", "legs: date start_s end_s area"},
	{"what happened in sentences", "", "Date|In|Out|What happened\n2026-07-04|06:00|08:00|2 boated, 1 " +
		"pulled\n2026-07-05|06:00|08:00|nothing\n2026-07-06|06:00|08:00|1 boated", "flat: date start_s end_s story"},
	{"what happened in a word", "", "Date|Time|Fish|What happened\n2026-07-04|06:40|Wahoo|pulled " +
		"hook\n2026-07-05|06:40|Wahoo|boated", "strikes: date time_s species outcome"},
	{"a strike's lure weight and distance", "", "Date|Time|Lure|Lure weight|Dist|Result\n2026-07-04|06:40|Jet|140 " +
		"g|45 m|lost", "strikes: date time_s lure lure_weight_g setback_m outcome"},
	{"a strike's lure weight by its unit", "", "Date|Time|Fish|Lure|Weight|Result|Lbs\n2026-07-04|06:40|Wahoo|Jet|8 " +
		"oz|lost|", "strikes: date time_s species lure lure_weight_g outcome scale_kg/lb"},
	{"a strike's fish in pounds and ounces", "", "Date|Time|Fish|Weight|Lure|Result\n2026-07-04|06:40|Wahoo|12 lb 8 " +
		"oz|Jet|landed\n2026-07-04|07:40|Wahoo||Jet|lost", "strikes: date time_s species scale_kg lure outcome"},
	{"days of the sheet's month", "Jan 26", "Day|Start|End|Speed\n4|06:00|08:00|8\n11|06:00|08:00|8",
		"legs: date start_s end_s speed_kn"},
	{"a set is no September", "Set 2", "Day|Start|End|Speed\n4|06:00|08:00|8\n11|06:00|08:00|8",
		"legs: trip start_s end_s speed_kn"},
	{"time in before time out", "", "Date|Time in|Time out|Speed\n2026-06-03|06:00|08:00|8\n2026-06-04|06:00|09:00|8",
		"legs: date start_s end_s speed_kn"},
	{"time out before time in", "", "Trip|Date|Time out|Time in\n1|2026-06-03|05:00|15:00\n2|2026-06-04|05:10|14:00",
		"trips: trip date depart_s return_s"},
	{"from and to as places", "", "Trip|Date|From|To\nT1|2026-06-03|marina|bay\nT2|2026-06-04|marina|marina",
		"trips: trip date port ?To"},
	{"lures counted", "", "Date|Start|End|Lures\n2026-06-03|06:00|08:00|5\n2026-06-03|08:00|09:00|5",
		"legs: date start_s end_s lines_out"},
	{"lures named", "", "Date|Start|End|Lures\n2026-06-03|06:00|08:00|Cope", "flat: date start_s end_s lure"},
	{"gear that says how many lines", "", "Date|Start|End|Gear\n2026-06-03|06:00|08:00|4 lines",
		"legs: date start_s end_s lines_out"},
	{"gear that does not", "", "Date|Start|End|Gear\n2026-06-03|06:00|08:00|light", "legs: date start_s end_s ?Gear"},
	{"distance of a lure", "", "Trip|Line|Lure|Dist.\n1|2|Cope|45 m", "lines: trip line lure setback_m"},
	{"distance run", "", "Date|Start|End|Lure|Distance (nm)\n2026-06-03|06:00|08:00|Cope|22",
		"flat: date start_s end_s lure ?Distance (nm)"},
	{"distance of who knows what", "", "Date|Start|End|Lure|Distance\n2026-06-03|06:00|08:00|Cope|22",
		"flat: date start_s end_s lure ?Distance"},
	{"line class beside an angler", "", "Date|Angler|Species|Line (kg)|Weight (kg)\n2026-06-03|Ansa|Wahoo|24|14",
		"fish: date angler species ?Line (kg) scale_kg/kg"},
	{"skirt for want of a lure", "", "Trip|Rod|Skirt|Drag\n1|2|Cope|18", "lines: trip line lure drag_kg"},
	{"skirt beside a lure", "", "Trip|Rod|Skirt|Lure|Drag\n1|2|pink|Cope|18", "lines: trip line colour lure drag_kg"},
	{"minutes of a fight", "", "Date|Start|End|Species|Minutes\n2026-06-03|06:00|08:00|Wahoo|9",
		"flat: date start_s end_s species fight_s/min"},
	{"a log of events", "", "Date|Time|What|Lure\n2026-06-03|06:00|lines " +
		"in|\n2026-06-03|07:10|strike|Cope\n2026-06-03|12:00|lines up|", "events: date time_s event lure"},
	{"no header", "", "a|b\n1|2", ""}, {"one known heading alone", "", "Date|Sandwiches\n2026-06-03|2", ""},
	{"nothing", "", "", ""},
	{"Spanish", "", "Fecha|Hora inicio|Hora " +
		"fin|Velocidad|Cañas|Picadas\n3/6/26|06:00|08:00|8|4|2\n14/6/26|06:30|11:00|9|5|0",
		"flat: date start_s end_s speed_kn lines_out strikes_n"},
	{"Italian", "", "Data|Inizio|Fine|Velocità|Canne\n3/6/26|06:00|08:00|8|4\n14/6/26|06:30|11:00|9|5",
		"legs: date start_s end_s speed_kn lines_out"},
	{"French", "", "Date|Début|Fin|Vitesse|Lignes\n3/6/26|06:00|08:00|8|4\n14/6/26|06:30|11:00|9|5",
		"legs: date start_s end_s speed_kn lines_out"},
	{"German", "", "Datum|Beginn|Ende|Ruten\n3.6.26|06:00|08:00|4\n14.6.26|06:30|11:00|5",
		"legs: date start_s end_s lines_out"},
	{"Portuguese", "", "Data|Início|Fim|Velocidade|Linhas\n3/6/26|06:00|08:00|8|4\n14/6/26|06:30|11:00|9|5",
		"legs: date start_s end_s speed_kn lines_out"},
	{"an empty column of notes is no log of events", "",
		"Date|Time|Outcome|Species|Notes\n2026-06-03|06:40|lost|Wahoo|\n2026-06-04|07:40|lost|Wahoo|",
		"strikes: date time_s outcome species notes"},
	{"hours as hours and minutes", "",
		"Date|Hours|Lines|Bites\n2026-06-03|4:30|5|2\n2026-06-04|3:15|5|0\n2026-06-05|6:00|4|1",
		"flat: date duration_s/h lines_out strikes_n"},
	{"a fight in minutes and seconds", "", "Date|Time|Outcome|Species|Fight " +
		"time\n2026-06-03|06:40|landed|Wahoo|0:25\n2026-06-04|07:40|landed|Wahoo|1:05",
		"strikes: date time_s outcome species fight_s"},
	{"kept or not beside a species", "",
		"Date|Species|Angler|Kept?\n2026-06-03|Wahoo|Ansa|yes\n2026-06-04|Wahoo|Olin|n",
		"fish: date species angler kept"},
	{"nights", "", "Date|Set|Hauled|Speed (kt)|Lines\n5/9/25|2230|0415|4|3\n12/9/25|2200|0510|4|3",
		"legs: date start_s end_s speed_kn/kn lines_out"},
	{"the same hours every day", "",
		"Date|Start|End|Rods\n2026-06-03|06:00|12:00|4\n2026-06-04|06:00|12:00|5\n2026-06-05|06:00|12:00|4\n" +
			"2026-06-06|06:00|12:00|6", "legs: date start_s end_s lines_out"},
}
