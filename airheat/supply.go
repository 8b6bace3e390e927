package airheat

import (
	"fmt"
)

// SupplyCaution is to be printed wherever a supply temperature is shown.
const SupplyCaution = "Hot supply air softens film, scorches leaves and burns skin. Keep outlets clear of film, crop and people; follow the maker's limits, local codes and licensed practice."

// SupplyLimits are the temperatures above which supply air does harm where it
// strikes.
type SupplyLimits struct {
	Film   float64 // °C, any finite number, of air that strikes the film for long
	Plant  float64 // °C, any finite number, of air that strikes leaves
	Person float64 // °C, any finite number, of air that strikes people
}

// DefaultSupplyLimits are round figures from memory: polyethylene film 60 °C,
// leaves 40 °C, people 50 °C. The makers' and the grower's own figures come first.
func DefaultSupplyLimits() SupplyLimits { return SupplyLimits{Film: 60, Plant: 40, Person: 50} }

// Warnings returns a line for each limit that air of the temperature supply,
// °C, exceeds where it leaves the outlet; a jet is cooler further on. Nil
// when there is none.
func (l SupplyLimits) Warnings(supply float64) []string {
	var w []string
	for _, k := range [...]struct {
		what  string
		limit float64
	}{{"film", l.Film}, {"plants", l.Plant}, {"people", l.Person}} {
		if supply > k.limit {
			s := fmt.Sprintf("%.0f", supply)
			if s == fmt.Sprintf("%.0f", k.limit) {
				s = "a little more than " + s
			}
			w = append(w, fmt.Sprintf("supply air of %s °C is above the limit of %.0f °C for %s at the outlet", s, k.limit, k.what))
		}
	}
	return w
}
