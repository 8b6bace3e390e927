package airheat

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
)

// coolings are the first hour or more without heat of a glass compartment of
// 96 m² with both screens drawn [Hemming19]: air at the start and outside, °C, the
// time, h, and the measured loss per floor, W/(m² K), and rate, K/h.
var coolings = []struct{ start, outside, hours, loss, rate float64 }{
	{19.2, 8.6, 1.6, 3.60, 1.56},
	{18.8, 4.3, 1.1, 3.47, 1.09},
	{21.8, 11.0, 1.2, 3.47, 1.83},
	{20.8, 8.5, 1.3, 3.10, 1.38},
	{21.6, 9.5, 1.5, 3.10, 1.40},
	{19.9, 13.1, 1.6, 4.08, 0.50},
	{22.8, 12.1, 1.2, 4.08, 2.67},
	{20.5, 10.7, 1.0, 3.96, 1.00},
	{20.5, 8.5, 1.0, 3.83, 0.90},
}

// oneMetre is a house of one square metre with the stores and the loss, W/(m² K), and
// air 4 m high.
func oneMetre(t *testing.T, s envelope.NodeStores, loss float64) Transient {
	return house(t, envelope.Nodes{
		AirCapacity: 4 * 1.2 * 1010, StructureCapacity: s.Structure, SoilCapacity: s.SoilDepth * 3e6,
		Cover: loss, AirStructure: s.AirStructure, AirSoil: s.AirSoil, SoilDeep: 0.3,
	})
}

// cooling returns the rate, K/h, and the apparent heat capacity per floor, J/(m²
// K), of a house of one square metre with the stores; deep soil as warm as the house's
// mean.
func cooling(t *testing.T, s envelope.NodeStores, k int) (rate, capacity float64) {
	c := coolings[k]
	h := oneMetre(t, s, c.loss)
	d := envelope.Drive{Outside: c.outside, Deep: 15}
	_, at := h.HoldingHeat(d, c.start)
	end := h.After(at, d, time.Duration(c.hours*float64(time.Hour))).Air
	rate = (c.start - end) / c.hours
	return rate, c.loss * ((c.start+end)/2 - c.outside) / rate * 3600
}

// The three ready-made stores answer with the heat capacities that the nine
// measured nights show: 50 the least, 90 the median, 190 kJ/(m² K) the most; and
// the band between the ends holds each night's rate, to the 0.1 K/h it is known.
func TestStoresCoolAsMeasuredHousesDo(t *testing.T) {
	least, most := envelope.NodeStoresSpread()
	median := func(s envelope.NodeStores) float64 {
		var all []float64
		for k := range coolings {
			_, c := cooling(t, s, k)
			all = append(all, c/1e3)
		}
		slices.Sort(all)
		return all[len(all)/2]
	}
	require.InEpsilon(t, 50, median(least), 0.06)
	require.InEpsilon(t, 90, median(envelope.DefaultNodeStores()), 0.06)
	require.InEpsilon(t, 190, median(most), 0.06)
	for k, c := range coolings {
		fast, _ := cooling(t, least, k)
		slow, _ := cooling(t, most, k)
		require.Less(t, slow, c.rate+0.1, "night %d", k)
		require.Greater(t, fast, c.rate-0.1, "night %d", k)
	}
}

// warmings are the first hour of heat, W/m², after a steady time in the same
// compartment without screens: two of twelve, whose apparent capacities lie between -14
// and 74 kJ/(m² K), median 38; what was warm before counts for as much.
var warmings = []struct{ heat, start, outside, rate float64 }{
	{74, 18.8, 14.7, 2.6},
	{112, 21.2, 12.7, 2.5},
}

// What measured houses take up in the first hour of heat is less than what they give
// back in the first hour without: the least of the stores lies within the band of the
// twelve events, the default, made for cooling, a quarter above its upper end, so that a
// warm-up computed with it takes rather too long.
//
// Not run: tunnels that cool at sunset or through a night, and rows under covers, whose
// form or weather is not told (Savage 1980, abstract; Brentarolli and others, two tunnels
// in Italy; North Willamette 1983); a house warmed by an earth tube of unknown flow
// (Jethva and Sharan 2016, abstract); heat capacities of air, canopy and glass by the square
// metre, products of which the measured stores are the sum.
func TestStoresWarmAsMeasuredHousesDo(t *testing.T) {
	least, _ := envelope.NodeStoresSpread()
	for _, w := range warmings {
		const loss = 9.02                        // W/(m² K), measured without screens
		capacity := func(rate float64) float64 { // kJ/(m² K)
			return (w.heat - loss*(w.start+rate/2-w.outside)) / rate * 3.6
		}
		apparent := func(s envelope.NodeStores) float64 {
			h := oneMetre(t, s, loss)
			d := envelope.Drive{Outside: w.outside, Deep: 15}
			_, at := h.HoldingHeat(d, w.start)
			d.Heat = w.heat
			return capacity(h.After(at, d, time.Hour).Air - w.start)
		}
		require.InDelta(t, 35, capacity(w.rate), 1)
		require.Greater(t, apparent(least), 38.0)
		require.Less(t, apparent(least), 74.0)
		require.InEpsilon(t, 1.25*74, apparent(envelope.DefaultNodeStores()), 0.05)
	}
}
