package lighting

import (
	"bytes"
	"testing"

	"cloche.example/internal/speed"
)

// lm63Large is a file of 73 planes of 181 angles, about 100 kB.
func lm63Large(b *testing.B) []byte {
	w := CandelaWeb{Coordinates: TypeC}
	for v := range 181 {
		w.Vertical = append(w.Vertical, float64(v))
	}
	for h := range 73 {
		w.Horizontal = append(w.Horizontal, float64(5*h))
		row := make([]float64, 181)
		for v := range row {
			row[v] = float64((v*7919+h%72*104729)%1000000) / 100
		}
		w.Candela = append(w.Candela, row)
	}
	var out bytes.Buffer
	f := LM63{Edition: LM63of2002, Lamps: 1, LumensPerLamp: -1, Field12: 1, InputPower: 100, Web: w}
	if err := f.Write(&out); err != nil {
		b.Fatal(err)
	}
	return out.Bytes()
}

// The limit is the conversion of decimal numbers, about 25 ns for one of seven
// bytes.
func BenchmarkLM63(b *testing.B) {
	data := lm63Large(b)
	b.SetBytes(int64(len(data)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ReadLM63(bytes.NewReader(data), nil); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSpectrumLuminous(b *testing.B) {
	s := IlluminantD65()
	b.ReportAllocs()
	for b.Loop() {
		speed.Sink = s.Luminous()
	}
}

func BenchmarkSeason(b *testing.B) {
	s := flatSeason(200, 8760)
	b.ReportAllocs()
	for b.Loop() {
		r, err := s.Solve()
		if err != nil {
			b.Fatal(err)
		}
		speed.Sink = r.Lamps
	}
}
