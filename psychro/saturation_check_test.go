package psychro

import (
	"testing"

	"cloche.example/internal/check"
)

// [IapwsIF07] tables 35 and 36 whole: the equations beyond the range that the
// exported functions accept, and [HoF17] ch. 1 table 3 at 150 °C.
func TestSaturationLineTables(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "IapwsIF07.Table35/300K", In: []float64{300}, Printed: "0.353658941e-2"},
		{Where: "IapwsIF07.Table35/500K", In: []float64{500}, Printed: "0.263889776e1"},
		{Where: "IapwsIF07.Table35/600K", In: []float64{600}, Printed: "0.123443146e2"},
	}, func(in ...float64) float64 { return liquidSaturation(in[0]-kelvin) * 1e-6 })
	check.Run(t, []check.Row{
		{Where: "IapwsIF07.Table36/0.1MPa", In: []float64{0.1}, Printed: "0.372755919e3"},
		{Where: "IapwsIF07.Table36/1MPa", In: []float64{1}, Printed: "0.453035632e3"},
		{Where: "IapwsIF07.Table36/10MPa", In: []float64{10}, Printed: "0.584149488e3"},
	}, func(in ...float64) float64 { return liquidTemperature(in[0]*1e6) + kelvin })
	check.Run(t, []check.Row{
		{Where: "HoF17.ch1.Table3/150C", In: []float64{150}, Printed: "476101.4", Tol: 35, Why: "IF97 is 0.007 % off IAPWS-95 here"},
	}, func(in ...float64) float64 { return liquidSaturation(in[0]) })
}
