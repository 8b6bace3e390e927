package fromplan

import (
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"cloche.example/examples/internal/input"
	"cloche.example/examples/internal/plan"
	"cloche.example/lighting"
)

// What a file beside a plan may hold at most.
const (
	lightBytes = 1 << 20 // of a photometric file
	lineBytes  = 1 << 12 // of a line of a spectrum
	mostLines  = 20000   // of a spectrum: more than any spectrometer writes
)

// Bed is the lowest bed, on its trays; the house's floor has its origin where
// the bed begins.
func Bed(p *plan.Plan) lighting.Bed {
	return lighting.Bed{Z: p.Lights.TraysAboveFloor, Length: p.Lights.BedLength, Width: p.Lights.BedWidth}
}

// Lamp is one lamp at full output on its first day; upkeep, a factor, is what is
// left of its light, p.Lights.Maintenance at harvest.
func Lamp(p *plan.Plan, upkeep float64) (lighting.Fixture, error) {
	l := p.Lights
	f := lighting.Fixture{Power: l.Power, Length: l.LampLength}
	if l.PhotometricFile == "" {
		beam, err := lighting.FromBeamAngle(l.PPF*upkeep, l.Beam)
		f.Light = beam
		return f, err
	}
	table, err := Photometry(p)
	if err != nil {
		return f, err
	}
	perLumen, err := PhotonsPerLumen(p)
	if err != nil {
		return f, err
	}
	f.Light, err = table.WithPhotonsPerLumen(perLumen * upkeep)
	return f, err
}

// Photometry reads the lamp's photometric file.
func Photometry(p *plan.Plan) (*lighting.CandelaTable, error) {
	text := func(key, name string) (io.Reader, error) {
		b, err := input.Text(name, strings.NewReader(""), lightBytes)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", key, err)
		}
		return strings.NewReader(string(b)), nil
	}
	l := p.Lights
	file, err := text("lights.photometric_file", l.PhotometricFile)
	if err != nil {
		return nil, err
	}
	var tilt io.Reader
	if l.TiltFile != "" {
		if tilt, err = text("lights.tilt_file", l.TiltFile); err != nil {
			return nil, err
		}
	}
	read, err := lighting.ReadLM63(file, tilt)
	if err != nil {
		return nil, fmt.Errorf("lights.photometric_file: %s: %w", l.PhotometricFile, err)
	}
	return read.Table()
}

// PhotonsPerLumen is what a photometric file's light is counted by, µmol/lm:
// the plan's own figure or that of its spectrum.
func PhotonsPerLumen(p *plan.Plan) (float64, error) {
	l := p.Lights
	if l.PhotonsPerLumen != nil {
		return *l.PhotonsPerLumen, nil
	}
	if l.SpectrumFile == "" {
		return 0, errors.New("lights.photometric_file tells light in lumens: give lights.photons_per_lumen_umol_s_lm or lights.spectrum_file")
	}
	s, err := Spectrum(l.SpectrumFile)
	if err != nil {
		return 0, fmt.Errorf("lights.spectrum_file: %w", err)
	}
	return s.PhotonsPerLumen(lighting.PAR()), nil
}

// Spectrum reads the spectrum of a file, as ReadSpectrum does.
func Spectrum(name string) (lighting.Spectrum, error) {
	file, err := input.Open(name, strings.NewReader(""))
	if err != nil {
		return lighting.Spectrum{}, err
	}
	defer file.Close()
	s, err := ReadSpectrum(file)
	if err != nil {
		err = fmt.Errorf("%s: %w", name, err)
	}
	return s, err
}

// ReadSpectrum reads lines of wavelength in nm and power in W/nm, a comma between;
// lines that begin with # are left out.
func ReadSpectrum(r io.Reader) (lighting.Spectrum, error) {
	var nm, power []float64
	for line, err := range input.Lines(r, lineBytes) {
		if err != nil {
			return lighting.Spectrum{}, err
		}
		text := strings.TrimSpace(string(line.Text))
		if text == "" || text[0] == '#' {
			continue
		}
		if line.Number > mostLines {
			return lighting.Spectrum{}, fmt.Errorf("longer than %d lines", mostLines)
		}
		a, b, ok := strings.Cut(text, ",")
		x, e1 := strconv.ParseFloat(strings.TrimSpace(a), 64)
		y, e2 := strconv.ParseFloat(strings.TrimSpace(b), 64)
		if !ok || e1 != nil || e2 != nil {
			return lighting.Spectrum{}, fmt.Errorf("line %d: %.40q is not a wavelength in nm and a power, a comma between", line.Number, text)
		}
		nm, power = append(nm, x), append(power, y)
	}
	return lighting.NewSpectrum(nm, power)
}

// Lamps are the lamps of one tier at harvest, in rows over the bed, each row
// dimmed as its group says.
func Lamps(p *plan.Plan) (lighting.Layout, error) {
	l := p.Lights
	f, err := Lamp(p, l.Maintenance)
	if err != nil {
		return nil, err
	}
	all, err := lighting.Rows(f, Bed(p), l.HeightAboveTrays, l.PerRow, l.Rows)
	if err != nil {
		return nil, err
	}
	for _, g := range l.Groups {
		for _, row := range g.Rows {
			for i := range l.PerRow {
				all[(int(row)-1)*l.PerRow+i].Group = g.Name
			}
		}
	}
	return all, nil
}

// LitLamps are Lamps with the light that their groups leave them; those of a group
// that is off are not among them.
func LitLamps(p *plan.Plan) (lighting.Layout, error) {
	all, err := Lamps(p)
	if err != nil {
		return nil, err
	}
	levels := Levels(p)
	dimmed := map[float64]lighting.Distribution{}
	var lit lighting.Layout
	for _, f := range all {
		v := levels[f.Group]
		if v == 0 {
			continue
		}
		if v < 1 && dimmed[v] == nil {
			lamp, err := Lamp(p, p.Lights.Maintenance*v)
			if err != nil {
				return nil, err
			}
			dimmed[v] = lamp.Light
		}
		if v < 1 {
			f.Light = dimmed[v]
		}
		lit = append(lit, f)
	}
	if len(lit) == 0 {
		return nil, errors.New("lights.groups: every lamp is off")
	}
	return lit, nil
}

// Levels are the shares of full output of each group of lamps, by name; that of
// lamps without a group is 1.
func Levels(p *plan.Plan) map[string]float64 {
	m := map[string]float64{"": 1}
	for _, g := range p.Lights.Groups {
		m[g.Name] = g.Level
	}
	return m
}
