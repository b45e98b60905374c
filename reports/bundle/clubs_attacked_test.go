package bundle

import (
	"errors"
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
	boats, bundles, held, few, claims int
	recovered                         []string
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

func TestNoTripFromAnyClub(t *testing.T) {
	for summaries := 1; summaries <= 3; summaries++ {
		var n tally
		for i := range clubsToTry(t) {
			for _, g := range club(i, summaries) {
				n.boats++
				n.attack(t, g, g.shared(t, &n))
			}
			if len(n.recovered) > 0 {
				t.Fatalf("club %d, %d summaries: %d figures, the first: %s", i, summaries, len(n.recovered), n.recovered[0])
			}
		}
		t.Logf("%d summaries: %d boats, %d bundles; %d not written for what they would show, %d for too few trips; %d claims, %d recovered",
			summaries, n.boats, n.bundles, n.held, n.few, n.claims, len(n.recovered))
		if n.bundles < n.boats/2 || summaries > 1 && n.bundles < n.boats {
			t.Errorf("only %d bundles of %d boats: the attack shows little", n.bundles, n.boats)
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
			n.bundles++
			out = append(out, s)
			last = &Shared{On: "2026-08-01", Season: s, Source: src}
		}
	}
	for trip, k := range g.epoch {
		g.epoch[trip] = epochs[k] // past the last one: in no summary
	}
	return out
}
