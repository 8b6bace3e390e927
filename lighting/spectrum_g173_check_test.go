package lighting

import (
	"testing"

	"cloche.example/internal/check"
	"github.com/stretchr/testify/require"
)

// readTable reads the numbers of a file of testdata, row by row.
// The sun of [AstmSun03], AM1.5 global: the total that the documentation of
// the library pvlib prints, and integrals made elsewhere by trapezoids from the
// same table; here photons and lumens are exact for its straight lines.
func TestSunOfASTM(t *testing.T) {
	rows := check.Numbers(t, "astm_g173.csv")
	require.Len(t, rows, 2002)
	var nm, global, direct []float64
	for _, r := range rows {
		nm, global, direct = append(nm, r[0]), append(global, r[1]), append(direct, r[2])
	}
	sun, disc := spectrum(t, nm, global), spectrum(t, nm, direct)
	total := sun.Power(280, 4000)
	const trapezoid = "trapezoids in steps of 1 nm against straight lines"
	check.Verify(t, []check.Got{
		{Row: check.Row{Where: "AstmSun03/total, W/m²", Printed: "1000.37"}, Value: total},
		{Row: check.Row{Where: "AstmSun03/total by trapezoids, W/m²", Printed: "1000.37066"}, Value: total},
		{Row: check.Row{Where: "AstmSun03/total of the direct sun, from memory, W/m²", Printed: "900.1"}, Value: disc.Power(280, 4000)},
		{Row: check.Row{Where: "AstmSun03/total of the direct sun by trapezoids, W/m²", Printed: "900.139329"}, Value: disc.Power(280, 4000)},
		{Row: check.Row{Where: "AstmSun03/400 to 700 nm, W/m²", Printed: "429.8311"}, Value: sun.Power(400, 700)},
		{Row: check.Row{Where: "AstmSun03/share of 400 to 700 nm", Printed: "0.42967184"}, Value: sun.Power(400, 700) / total},
		{Row: check.Row{Where: "AstmSun03/PPFD, µmol/(m² s)", Printed: "1977.86788", Tol: 3e-4, Why: trapezoid}, Value: sun.PPF()},
		{Row: check.Row{Where: "AstmSun03/µmol of PAR per J of PAR", Printed: "4.60150017", Tol: 1e-6, Why: trapezoid}, Value: sun.PARPhotonsPerJoule()},
		{Row: check.Row{Where: "AstmSun03/µmol of PAR per J of sun", Printed: "1.97713504", Tol: 4e-7, Why: trapezoid}, Value: sun.PPF() / total},
		{Row: check.Row{Where: "AstmSun03/lx per µmol", Printed: "55.3601401", Tol: 1e-3, Why: "V by cubics between 5 nm"}, Value: sun.LuxPerPPFD()},
		{Row: check.Row{Where: "Thimijan83.Table3/sun and sky lx", Printed: "54", Tol: 1.4, Why: "another daylight than the clear sky's, by 3 %"}, Value: sun.LuxPerPPFD()},
		{Row: check.Row{Where: "Thimijan83.Table3/sun and sky µmol per J", Printed: "4.57", Tol: 0.035, Why: "another daylight than the clear sky's, by 1 %"}, Value: sun.PARPhotonsPerJoule()},
	})
	require.NoError(t, check.Row{Where: "DaylightClear", Printed: "1.977"}.Verify(sun.PPF()/total))
	require.InDelta(t, DaylightClear, sun.PPF()/total, 5e-4)
	// Bands of plants in this light stay apart and in order.
	require.Greater(t, sun.Photons(band("extended 400-750 nm")), sun.PPF())
	require.InEpsilon(t, sun.Photons(Band{"to 800 nm", 400, 800}), sun.PPF()+sun.Photons(FarRed()), 1e-13)
}
