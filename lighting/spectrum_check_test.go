package lighting

import (
	"math"
	"testing"

	"cloche.example/internal/check"
	"github.com/stretchr/testify/require"
)

// Points of V(λ) of 1 nm [CieVis23], where the table of 5 nm is interpolated
// and where it is not.
func TestLuminousEfficiencyTable(t *testing.T) {
	row := func(printed string, nm, tol float64) check.Row {
		why := ""
		if tol > 0 {
			why = "cubics between 5 nm against the CIE's own interpolation"
		}
		return check.Row{Where: "CieVis23.Table", In: []float64{nm}, Printed: printed, Tol: tol, Why: why}
	}
	check.Run(t, []check.Row{
		row("0.000396", 400, 0), row("0.038", 450, 0), row("0.323", 500, 0), row("0.503", 510, 0), row("1.000", 555, 0),
		row("0.631", 600, 0), row("0.503", 610, 0), row("0.107", 650, 0), row("0.004102", 700, 0),
		row("0.0005722187", 404, 2e-6), row("0.0417680", 452, 5e-5), row("0.3085780", 499, 2e-4), row("0.5445120", 512, 2e-4),
		row("0.9983255", 558, 1e-4), row("0.9980983", 552, 1e-4), row("0.9070064", 576, 1e-4), row("0.6438448", 599, 5e-5),
		row("0.2978504", 627, 1e-4), row("0.0573962", 661, 5e-5), row("0.0043800750", 699, 5e-6),
	}, func(in ...float64) float64 { return LuminousEfficiency(in[0]) })
}

// Each figure of the transcribed tables, small or large, moves the
// fingerprints, which are of the tables as read. The area under V(λ) is
// published: 106.857 nm (from memory).
func TestTablesAreTranscribed(t *testing.T) {
	area := 0.0
	for _, v := range luminous {
		area += 5 * v
	}
	require.NoError(t, check.Row{Where: "CieVis23/area", Printed: "106.857"}.Verify(area))
	fingerprint := func(v []float64) float64 {
		s := 0.0
		for i, x := range v {
			s += float64(i+1) * math.Log(x)
		}
		return s
	}
	require.InDelta(t, -22250.623517, fingerprint(luminous[:]), 1e-3)
	require.InDelta(t, 6407.754475, fingerprint(d65[:]), 1e-3)
}

// Quantities of the standard illuminants; lx per µmol and µmol/J as integrated
// elsewhere from the 1 nm tables, 360 to 780 nm.
func TestIlluminants(t *testing.T) {
	d, a := IlluminantD65(), IlluminantA()
	const why = "V by cubics between 5 nm"
	verify(t, []gotRow{
		{check.Row{Where: "CieCol18.D65/lx per µmol", Printed: "55.4979", Tol: 1e-3, Why: why}, d.LuxPerPPFD()},
		{check.Row{Where: "CieCol18.D65/µmol per J", Printed: "4.52845"}, d.PARPhotonsPerJoule()},
		{check.Row{Where: "CieCol18.A/lx per µmol", Printed: "50.2566", Tol: 1e-3, Why: why}, a.LuxPerPPFD()},
		{check.Row{Where: "CieCol18.A/µmol per J", Printed: "5.013275", Tol: 5e-5, Why: "the formula in steps of 1 nm against a table of 5 nm"}, a.PARPhotonsPerJoule()},
		{check.Row{Where: "CieCol18.A/S at 400 nm, from memory", Printed: "14.7080"}, a.At(400)},
		{check.Row{Where: "CieCol18.A/S at 700 nm, from memory", Printed: "198.261"}, a.At(700)},
		{check.Row{Where: "CieCol18.D65/S at 555 nm", Printed: "102.023"}, d.At(555)},
		{check.Row{Where: "CieCol18.D65/S at 495 nm", Printed: "109.082", Tol: 6e-4, Why: "the 5 nm value is rounded from the two beside it"}, d.At(495)},
	})
}

func TestPhotonsPerJoule(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "SI2019/450 nm", In: []float64{450}, Printed: "3.7617"},
		{Where: "SI2019/555 nm", In: []float64{555}, Printed: "4.6394"},
		{Where: "SI2019/660 nm", In: []float64{660}, Printed: "5.5172"},
		{Where: "SI2019/730 nm", In: []float64{730}, Printed: "6.1023"},
	}, func(in ...float64) float64 { return PhotonsPerJoule(in[0]) })
	require.InEpsilon(t, 119.626566, nmPerMicromole, 1e-8)
}

// [Thimijan83] table 3 as quoted, and what the standard illuminants give in its
// place: its daylight is another one, by 3 %.
func TestThimijanAndHeins(t *testing.T) {
	printed := map[string][2]float64{"sun and sky": {54, 4.57}, "blue sky": {52, 4.24}, "metal halide": {71, 4.59},
		"high-pressure sodium": {82, 4.98}, "cool white fluorescent": {74, 4.59}, "incandescent": {50, 5.0}}
	for _, b := range BroadbandFactors() {
		require.Equal(t, printed[b.Name], [2]float64{b.LuxPerPPFD, b.PhotonsPerJoule})
		require.InEpsilon(t, 1000, b.PPFD(b.Lux(1000)), 1e-15)
		require.InEpsilon(t, 100*b.PhotonsPerJoule, b.PPFDOfPAR(100), 1e-15)
	}
	require.Len(t, BroadbandFactors(), len(printed))
	d, a := IlluminantD65(), IlluminantA()
	const other = "another daylight than D65: the paper averages measured sun and sky"
	verify(t, []gotRow{
		{check.Row{Where: "Thimijan83.Table3/sun and sky lx", Printed: "54", Suspect: other, Right: "55.5"}, d.LuxPerPPFD()},
		{check.Row{Where: "Thimijan83.Table3/sun and sky µmol per J", Printed: "4.57", Suspect: other, Right: "4.528"}, d.PARPhotonsPerJoule()},
		{check.Row{Where: "Thimijan83.Table3/incandescent lx", Printed: "50"}, a.LuxPerPPFD()},
		{check.Row{Where: "Thimijan83.Table3/incandescent µmol per J", Printed: "5.0"}, a.PARPhotonsPerJoule()},
		{check.Row{Where: "Thimijan83.Table3/sodium lm per PAR watt", Printed: "408"}, broadband[3].LuxPerPPFD * broadband[3].PhotonsPerJoule},
	})
}
