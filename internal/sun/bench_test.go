package sun

import (
	"testing"
	"time"

	"cloche.example/internal/speed"
)

// 190 cosines and 63 pairs of sine and cosine.
func BenchmarkSun(b *testing.B) {
	site, _ := NewSite(50, 14, 0)
	at := time.Date(2025, 1, 1, 0, 0, 0, 0, time.UTC)
	b.ReportAllocs()
	for b.Loop() {
		at = at.Add(time.Hour)
		if at.Year() > 2090 {
			at = at.AddDate(-60, 0, 0)
		}
		speed.Sink = site.Sun(at).Elevation
	}
}
