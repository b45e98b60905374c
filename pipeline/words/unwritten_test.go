package words

import "testing"

// A log may say which bites nobody wrote down.
func TestUnwritten(t *testing.T) {
	for text, want := range map[string]Unwritten{
		"I only write down fish that were hooked; misses are not counted.":        {Missed: true},
		"Bites that did not hook are not in here.":                                {Missed: true},
		"Bites that did not hook are not counted":                                 {Missed: true},
		"We don't log knockdowns.":                                                {Missed: true},
		"Only fish that came to the boat are in here, no misses, no lost ones.":   {Missed: true, Hooked: true},
		"I do not count bites or lost fish, just what we got to the boat.":        {Missed: true, Hooked: true},
		"not counting bites or lost fish, only what came in":                      {Missed: true, Hooked: true},
		"just what came in the boat; bites not kept":                              {Missed: true, Hooked: true},
		"Fish in the boat only. I don't keep track of bites":                      {Missed: true, Hooked: true},
		"I count what came over the rail, nothing else (no bites, no lost fish)":  {Missed: true, Hooked: true},
		"Je ne note que ce qui est monté à bord, pas les touches ni les perdus":   {Missed: true, Hooked: true},
		"Solo apunto lo que subió a bordo; picadas y perdidos no":                 {Missed: true, Hooked: true},
		"Only landed fish are listed.":                                            {Missed: true, Hooked: true},
		"I do not note how many were really hooked.":                              {Hooked: true},
		"What came off is not split between hooked and not hooked.":               {Hooked: true},
		"Lost fish are not counted as landed.":                                    {},
		"Kept or released is not written down.":                                   {},
		"Bites/On/Boated are for the TROLL only, bait fish dont count":            {},
		"c=kg only if hung on the scale; note soltado = released.":                {},
		"Misses are counted too.":                                                 {},
		"hits less bit but did not hook less hooked then lost = landed":           {},
		"Blank count = none.":                                                     {},
		"Where the number of lines is not given I forgot to write it.":            {},
		"Number of lines: 7, all season. Only on trip 2 (Wed 4 May) it was 6.":    {},
		"Where trolling speed is missing I did not look at the instrument.":       {},
		"Lines and speed only written when they change, blank = as the row above": {},
		"Some we let go, some we keep - I do not note which.":                     {},
		"Lost two lures, not listed.":                                             {},
	} {
		if got, _ := UnwrittenIn(text); got != want {
			t.Errorf("%q: %+v, not %+v", text, got, want)
		}
	}
}
