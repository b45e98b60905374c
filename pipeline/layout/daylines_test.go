package layout

import "testing"

// TestDayLines holds that lines which tell of a day above its rows become a table of their own and give the rows their
// day; that days alone, a table with days of its own and one whose first rows have no such line stay as they are.
func TestDayLines(t *testing.T) {
	const heads = "time|species|outcome|length\n"
	for text, want := range map[string]string{
		"Mein Buch 2024\n" + heads + "Sa 3.8.2024: 6:30 bis 11:10, 5 Ruten, 7 kn\n07:10|Bonito|an Bord|61\n" +
			"08:00|Thun|ab|\n\nSo 4.8.2024: nichts gegangen\n" +
			"Mo 5.8.2024: 7:00 bis 9:00\n07:30|Thun|an Bord|90": "" +
			"table [time,species,outcome,length,date] 4=07:10 5=08:00 9=07:30; records [date,what happened] " +
			"3=3.8.2024 7=4.8.2024 8=5.8.2024",
		heads + "3.8.2024\n07:10|Bonito|an Bord|61\n4.8.2024\n08:00|Thun|ab|": "table [time,species,outcome,length] " +
			"2=3.8.2024 3=07:10 4=4.8.2024 5=08:00",
		heads + "06:10|Thun|ab|\n3.8.2024: 6:30 bis 11:10, 5 Ruten\n07:10|Bonito|an Bord|61": "table [time,species," +
			"outcome,length] 2=06:10 3=3.8.2024: 6:30 bis 11:10, 5 Ruten 4=07:10",
		"date|" + heads + "3.8.2024: morgens Wind\n3.8.2024|07:10|Bonito|an Bord|61\n" +
			"4.8.2024|08:00|Thun|ab|": "" +
			"table [date,time,species,outcome,length] 2=3.8.2024: morgens Wind 3=3.8.2024 4=4.8.2024",
	} {
		s := take(t, text)
		if got := shown(s); got != want {
			t.Errorf("%q:\n got %s\nwant %s", text, got, want)
			continue
		}
		if b := s.Blocks[0]; len(b.Labels) == 5 && b.Labels[4].Text == "date" && b.Rows[2].Cells[4].Text != "5.8.2024" {
			t.Errorf("the last row's day is %q", b.Rows[2].Cells[4].Text)
		}
	}
}
