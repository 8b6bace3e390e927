package lighting

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
)

// The samples of testdata/lm63 and what a reader must find in them; the
// expected values were computed by an independent reader, the fluxes as the
// closed-form integral of the bilinear interpolant.
type lm63Expected struct {
	Valid map[string]struct {
		Version    string      `json:"version"`
		Tilt       string      `json:"tilt"`
		Lamps      int         `json:"lamps"`
		Lumens     float64     `json:"lumens_per_lamp"`
		Multiplier float64     `json:"multiplier"`
		Type       string      `json:"type"`
		Units      string      `json:"units"`
		Width      float64     `json:"width"`
		Length     float64     `json:"length"`
		Height     float64     `json:"height"`
		Ballast    float64     `json:"ballast_factor"`
		Field12    float64     `json:"field12"`
		Watts      float64     `json:"input_watts"`
		Keywords   [][2]string `json:"keywords"`
		Vertical   []float64   `json:"vertical_angles"`
		Horizontal []float64   `json:"horizontal_angles"`
		Max        float64     `json:"max_candela"`
		Flux       float64     `json:"total_flux_exact"`
		Ratio      float64     `json:"ratio_to_lamp_lumens"`
		TiltData   *struct {
			Geometry int       `json:"lamp_geometry"`
			Angles   []float64 `json:"angles"`
			Factors  []float64 `json:"factors"`
			At20     float64   `json:"factor_at_20deg"`
		} `json:"tilt_include"`
		Samples []struct {
			Gamma   float64 `json:"gamma"`
			C       float64 `json:"C"`
			Candela float64 `json:"candela"`
		} `json:"samples"`
	} `json:"valid"`
	Malformed map[string]struct{} `json:"malformed"`
}

func lm63Samples(t testing.TB) lm63Expected {
	data, err := os.ReadFile("testdata/lm63/expected.json")
	require.NoError(t, err)
	var e lm63Expected
	require.NoError(t, json.Unmarshal(data, &e))
	require.Len(t, e.Valid, 5)
	require.Len(t, e.Malformed, 8)
	return e
}

func lm63File(t testing.TB, name string) []byte {
	data, err := os.ReadFile(filepath.Join("testdata/lm63", name))
	require.NoError(t, err)
	return data
}

func TestReadLM63Samples(t *testing.T) {
	near := cmpopts.EquateApprox(1e-12, 0)
	for name, want := range lm63Samples(t).Valid {
		t.Run(name, func(t *testing.T) {
			f, err := ReadLM63(bytes.NewReader(lm63File(t, name)), nil)
			require.NoError(t, err)
			metre := 1.0
			if want.Units == "feet" {
				metre = 0.3048
			}
			require.Equal(t, want.Version, f.Edition.String())
			require.Equal(t, want.Tilt == "NONE", f.Tilt == nil)
			require.Equal(t, want.Lamps, f.Lamps)
			require.Equal(t, map[string]Coordinates{"A": TypeA, "B": TypeB, "C": TypeC}[want.Type], f.Web.Coordinates)
			got := []float64{f.LumensPerLamp, f.Multiplier, f.Width, f.Length, f.Height, f.BallastFactor, f.Field12, f.InputPower}
			require.Empty(t, cmp.Diff([]float64{want.Lumens, want.Multiplier, want.Width * metre, want.Length * metre,
				want.Height * metre, want.Ballast, want.Field12, want.Watts}, got, near))
			var labels [][2]string
			for _, l := range f.Labels {
				labels = append(labels, [2]string{l.Keyword, l.Value})
			}
			require.Empty(t, cmp.Diff(want.Keywords, labels))
			if want.Vertical != nil {
				require.Empty(t, cmp.Diff(want.Vertical, f.Web.Vertical))
				require.Empty(t, cmp.Diff(want.Horizontal, f.Web.Horizontal))
			}
			top := 0.0
			for _, row := range f.Web.Candela {
				for _, v := range row {
					top = max(top, v)
				}
			}
			require.InEpsilon(t, want.Max, top, 1e-14)

			table, err := f.Table()
			require.NoError(t, err)
			require.InEpsilon(t, want.Flux, table.Lumens(), 1e-14)
			for _, s := range want.Samples {
				require.InDelta(t, s.Candela, table.Intensity(s.Gamma, s.C), 1e-11*top, "%v", s)
			}
			if want.Ratio > 0 {
				require.InEpsilon(t, want.Ratio, table.Lumens()/f.LampLumens(), 1e-14)
			}
			if want.TiltData != nil {
				require.Equal(t, want.TiltData.Geometry, f.Tilt.Geometry)
				require.Equal(t, want.TiltData.Angles, f.Tilt.Angles)
				require.Equal(t, want.TiltData.Factors, f.Tilt.Factors)
				require.InEpsilon(t, want.TiltData.At20, f.TiltFactor(20), 1e-14)
			}
		})
	}
}

func TestReadLM63RefusesMalformedSamples(t *testing.T) {
	place := map[string]LM63Error{
		"m01_missing_tilt.ies":           {Line: 10, Reason: "no line TILT="},
		"m02_too_few_candela.ies":        {Line: 11, Reason: "the file ends where the candela should stand"},
		"m03_angles_not_increasing.ies":  {Line: 9, Token: "30", Reason: "vertical angle 4 of 7: not increasing after 30"},
		"m05_non_numeric_token.ies":      {Line: 11, Token: "9O0", Reason: "not a plain number, for the candela"},
		"m08_tilt_include_truncated.ies": {Line: 10, Token: "1", Reason: "tilt angle 5 of 7: not increasing after 45"},
		"m11_tilt_file_reference.ies":    {Line: 6, Token: "MYLAMP.TLT", Reason: "the tilt data are in another file: pass its text"},
		"m12_huge_counts.ies":            {Line: 7, Token: "2000000000", Reason: "the number of vertical angles is more than the rest of the file can hold"},
		"m13_nan_inf.ies":                {Line: 11, Token: "NaN", Reason: "not a plain number, for the candela"},
	}
	for name := range lm63Samples(t).Malformed {
		t.Run(name, func(t *testing.T) {
			_, err := ReadLM63(bytes.NewReader(lm63File(t, name)), nil)
			var e *LM63Error
			require.True(t, errors.As(err, &e), "%v", err)
			require.ErrorIs(t, err, ErrRange)
			require.Empty(t, cmp.Diff(place[name], *e))
		})
	}
}
