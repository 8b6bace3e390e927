package fromplan_test

import (
	"testing"

	"cloche.example/examples/internal/fromplan"
)

func BenchmarkHouse(b *testing.B) {
	p := demo(b, `{}`)
	for b.Loop() {
		if _, err := fromplan.House(p, 15); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkGlazing(b *testing.B) {
	p := demo(b, `{}`)
	s, _ := fromplan.Shape(p)
	for b.Loop() {
		if _, err := fromplan.Glazing(p, s); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkLoss(b *testing.B) {
	for name, change := range map[string]string{"gable": `{}`, "arch": `{"house":{"shape":"round arch"}}`} {
		b.Run(name, func(b *testing.B) {
			p := demo(b, change)
			h, err := fromplan.House(p, 15)
			if err != nil {
				b.Fatal(err)
			}
			air, _ := fromplan.WinterNight(p)
			k, _, _ := fromplan.Conditions(p, air, 1, true)
			for b.Loop() {
				if _, err := h.Loss(k); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkBlow(b *testing.B) {
	p := demo(b, `{}`)
	for b.Loop() {
		if _, err := fromplan.Blow(p, p.Heater.Power, 15); err != nil {
			b.Fatal(err)
		}
	}
}
