package normalise_test

import (
	"strings"
	"testing"
)

// TestEventsInColumns holds that rows of a log of events that say a speed or lines in columns alone change them, that
// lines counted say they are in where none says each day that they are up, that a bite in words beside the event is at
// the speed from then on, and that what came on the wreck was not trolled.
func TestEventsInColumns(t *testing.T) {
	const day = `2023-05-0#,6:10,12.5,3,1,"knocked down, missed",
2023-05-0#,7:10,8.5,5,,,
2023-05-0#,8:10,,5,1,mahi 30in box,forgot to write the speed
2023-05-0#,9:00,,0,,"grouper box, grouper box","lines up, dropped on a wreck"
2023-05-0#,9:30,6,4,1,wahoo 40in let go (7.5 kts when he ate),lines in
2023-05-0#,10:00,,0,,,done
`
	text := "date,time,kts,rods,bites,what,note\n"
	for _, d := range []string{"1", "2", "3", "4"} {
		text += strings.ReplaceAll(day, "#", d)
	}
	told, aside := readEvents(t, "speed.csv", text+"2023-05-07,,,,,2 grouper box,\"bottom trip, no trolling\"\n")
	one := `6:10 missed
6:10-7:10 3 at 12.5
7:10-8:10 5 at 8.5
8:10 landed mahi 76.2
8:10-9:00 5 at 0
9:30 released wahoo 101.6
9:30-10:00 4 at 6
`
	expectTold(t, told, strings.Repeat(one, 4))
	expectTold(t, aside, "")
}
