package phrase

import "testing"

func BenchmarkTell(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		Tell("Took the Pruitts. Bumped into a sunfish the size of a door. Boxed a 39 inch mahi at 9:29. Hooked up "+
			"flat line at 10:45, never saw it, wire chafed through. 2 for 4.", Defaults{})
	}
}

func BenchmarkFishList(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		FishList("wahoo 51in 29lb; wahoo 49in 24lb", Defaults{})
	}
}
