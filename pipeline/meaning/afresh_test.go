package meaning

import (
	"strings"
	"testing"
)

// TestSaidAfresh tells a log of events that says the speed each time that lines go in from one that says changes.
func TestSaidAfresh(t *testing.T) {
	const head = "Date|Time|Event|Lines|Knots\n"
	day := func(second string) string {
		return "2026-06-0#|06:00|lines in|4|7\n|08:00|lines up||\n|08:30|lines in|4|" + second + "\n|10:00|lines up||\n"
	}
	text := ""
	for i, second := range []string{"7", "7", "8", "7", ""} {
		text += strings.ReplaceAll(day(second), "#", string(rune('1'+i)))
	}
	if p := planOf(t, "log", head+text); !p.SpeedAfresh || !p.LinesAfresh {
		t.Errorf("said each time: %t, %t", p.SpeedAfresh, p.LinesAfresh)
	}
	changes := strings.ReplaceAll(text, "|4|7\n|10", "|4|\n|10")
	if p := planOf(t, "log", head+changes); p.SpeedAfresh {
		t.Error("only changes are said")
	}
	const forgot = "\nWhere the speed is missing I did not look.\n"
	if p := planOf(t, "log", "Our log\n"+forgot+"\n"+head+changes); !p.SpeedAfresh {
		t.Error("the log says that nobody looked")
	}
}
