package bundle

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"
)

// clubsToTry is how many clubs are generated: WAKELEDGER_CLUBS, or a few.
func clubsToTry(t *testing.T) int {
	t.Helper()
	text := os.Getenv("WAKELEDGER_CLUBS")
	if text == "" {
		return 25
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 {
		t.Fatalf("WAKELEDGER_CLUBS is %q: expected a number of clubs", text)
	}
	return n
}

// tally counts what came of the clubs.
type tally struct {
	held, few, claims, exact int
	of                       [4]int // boats by how many summaries they share
	recovered                []string
}

func (n *tally) attack(t *testing.T, g generated, given []Season) {
	t.Helper()
	if len(given) == 0 {
		return
	}
	claims, err := attack(given, g.months)
	if err != nil {
		t.Fatal(err)
	}
	n.claims += len(claims)
	for _, told := range g.judge(claims) {
		if strings.Contains(told, "WRONG") {
			t.Fatalf("the attacker is wrong: %s", told)
		}
		n.recovered = append(n.recovered, told)
		if strings.Contains(told, "exactly") {
			n.exact++
		}
	}
}

// club is the boats of club number i with one, two or three summaries each.
func club(i, summaries int) []generated {
	random := rand.New(rand.NewPCG(uint64(i), uint64(summaries)))
	var boats []generated
	for range 2 + random.IntN(2) {
		boats = append(boats, generate(random, summaries))
	}
	return boats
}

// The rule holds: from what the boats of the clubs share, as they share it by default, no
// figure of a single trip or day is recovered.
func TestNoTripFromAnyClub(t *testing.T) {
	for summaries := 1; summaries <= 3; summaries++ {
		t.Run(fmt.Sprint("summaries=", summaries), func(t *testing.T) {
			t.Parallel()
			noTripFrom(t, clubsToTry(t), summaries)
		})
	}
}

func noTripFrom(t *testing.T, clubs, summaries int) {
	var n tally
	for i := range clubs {
		for _, g := range club(i, summaries) {
			given := g.shared(t, &n)
			n.of[len(given)]++
			n.attack(t, g, given)
		}
		if len(n.recovered) > 0 {
			t.Fatalf("club %d: %d figures, the first: %s", i, len(n.recovered), n.recovered[0])
		}
	}
	t.Logf("%d clubs: boats with 0, 1, 2, 3 summaries: %v; %d not written for what they would show, %d for too few "+
		"trips; %d claims, %d recovered",
		clubs, n.of, n.held, n.few, n.claims, len(n.recovered))
	if n.of[summaries] < clubs/4 {
		t.Errorf("only %d boats share %d summaries: the attack shows little", n.of[summaries], summaries)
	}
}

// The attacker can do it: by a rule that only counts trips, and without any, it recovers
// single trips of nearly every boat.
func TestTripsFromClubsByWeakerRules(t *testing.T) {
	for name, fewest := range map[string]int{"a rule that counts trips": MinTrips, "no rule": 0} {
		for summaries := 1; summaries <= 3; summaries++ {
			var n tally
			boats, open := 0, 0
			for i := range min(clubsToTry(t), 8) {
				for _, g := range club(i, summaries) {
					var given []Season
					for _, src := range g.sources {
						given = append(given, counted(src, fewest))
					}
					was := len(n.recovered)
					n.attack(t, g, given)
					if boats++; len(n.recovered) > was {
						open++
					}
				}
			}
			t.Logf("%s, %d summaries: %d figures of single trips or days, of %d of %d boats; %d of them to the last "+
				"digit; such as %s",
				name, summaries, len(n.recovered), open, boats, n.exact, n.recovered[0])
			if open < boats*9/10 {
				t.Errorf("%s, %d summaries: figures of only %d of %d boats", name, summaries, open, boats)
			}
		}
	}
}

// shared is what a boat shares as its season grows: what Make refuses is not shared. The
// trips of a summary that is not shared are first in the next.
func (g *generated) shared(t *testing.T, n *tally) []Season {
	t.Helper()
	var out []Season
	var last *Shared
	epochs := map[int]int{}
	for k, src := range g.sources {
		epochs[k] = len(out)
		s, err := Make("boat", src, last)
		var d *Difference
		switch {
		case errors.As(err, &d):
			n.held++
		case errors.Is(err, ErrTooFew):
			n.few++
		case err != nil:
			t.Fatal(err)
		default:
			out = append(out, s)
			last = &Shared{On: "2026-08-01", Season: s, Source: src}
		}
	}
	for trip, k := range g.epoch {
		g.epoch[trip] = epochs[k] // past the last one: in no summary
	}
	return out
}
