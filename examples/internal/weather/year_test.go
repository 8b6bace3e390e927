package weather

import (
	"bytes"
	"compress/gzip"
	"encoding/csv"
	"flag"
	"fmt"
	"io"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

var remake = flag.Bool("remake", false, "write greensboro.csv.gz anew from testdata/greensboro_tmy3.csv.gz")

// reading is a row of the reduced TMY3 file.
type reading map[string]float64

// readings returns the rows of the reduced file.
func readings(t testing.TB) []reading {
	t.Helper()
	file, err := os.Open("testdata/greensboro_tmy3.csv.gz")
	require.NoError(t, err)
	defer file.Close()
	z, err := gzip.NewReader(file)
	require.NoError(t, err)
	rows, err := csv.NewReader(z).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 8761)
	out := make([]reading, 8760)
	for i, row := range rows[1:] {
		out[i] = reading{}
		for k, cell := range row {
			v, err := strconv.ParseFloat(cell, 64)
			require.NoError(t, err)
			out[i][rows[0][k]] = v
		}
	}
	return out
}

// tmy3Text puts the rows back into the layout of TMY3. The reduced file leaves
// out the years of the months; reading does not use them, and 1988 is a
// placeholder.
func tmy3Text(rows []reading) []byte {
	var b bytes.Buffer
	b.WriteString("723170,\"GREENSBORO PIEDMONT TRIAD INT\",NC,-5.0,36.100,-79.950,273\n")
	b.WriteString("Date (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),DNI (W/m^2),DHI (W/m^2),OpqCld (tenths),Dry-bulb (C),Dew-point (C),RHum (%),Pressure (mbar),Wspd (m/s)\n")
	for _, r := range rows {
		fmt.Fprintf(&b, "%02.0f/%02.0f/1988,%02.0f:00,%g,%g,%g,%g,%g,%g,%g,%g,%g\n", r["month"], r["day"], r["hour_ending"],
			r["global_horizontal_w_m2"], r["direct_normal_w_m2"], r["diffuse_horizontal_w_m2"], r["opaque_cloud_tenths"],
			r["dry_bulb_c"], r["dew_point_c"], r["relative_humidity_pct"], r["pressure_mbar"], r["wind_m_s"])
	}
	return b.Bytes()
}

// TestTheYearIsMadeFromItsSource makes the embedded year again and compares
// every byte of its text.
func TestTheYearIsMadeFromItsSource(t *testing.T) {
	s, err := Read(bytes.NewReader(tmy3Text(readings(t))), Options{})
	require.NoError(t, err)
	s.Source = "US National Renewable Energy Laboratory, TMY3 723170, public domain; the state of an hour is the mean of the readings at its ends"
	s.Site.Name = "Greensboro Piedmont Triad, North Carolina"
	var text bytes.Buffer
	require.NoError(t, Write(&text, s))
	if *remake {
		var packed bytes.Buffer
		z, err := gzip.NewWriterLevel(&packed, gzip.BestCompression)
		require.NoError(t, err)
		_, err = z.Write(text.Bytes())
		require.NoError(t, err)
		require.NoError(t, z.Close())
		require.NoError(t, os.WriteFile("greensboro.csv.gz", packed.Bytes(), 0o644))
		greensboro = packed.Bytes()
	}
	z, err := gzip.NewReader(bytes.NewReader(greensboro))
	require.NoError(t, err)
	got, err := io.ReadAll(z)
	require.NoError(t, err)
	require.True(t, bytes.Equal(text.Bytes(), got), "greensboro.csv.gz is not what its source gives; go test -run Year ./examples/internal/weather -remake writes it anew")
}
