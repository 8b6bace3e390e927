package main

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"

	"cloche.example/lighting"
)

// maxLines is more than any spectrometer writes.
const maxLines = 20000

// readSpectrum reads lines of wavelength in nm and power in W/nm, a comma
// between; lines that begin with # are left out.
func readSpectrum(r io.Reader) (lighting.Spectrum, error) {
	var nm, power []float64
	lines := bufio.NewScanner(r)
	for n := 1; lines.Scan(); n++ {
		text := strings.TrimSpace(lines.Text())
		if text == "" || text[0] == '#' {
			continue
		}
		if n > maxLines {
			return lighting.Spectrum{}, fmt.Errorf("longer than %d lines", maxLines)
		}
		a, b, ok := strings.Cut(text, ",")
		x, errA := strconv.ParseFloat(strings.TrimSpace(a), 64)
		y, errB := strconv.ParseFloat(strings.TrimSpace(b), 64)
		if !ok || errA != nil || errB != nil {
			return lighting.Spectrum{}, fmt.Errorf("line %d: %.40q is not a wavelength in nm and a power, a comma between", n, text)
		}
		nm, power = append(nm, x), append(power, y)
	}
	if err := lines.Err(); err != nil {
		return lighting.Spectrum{}, err
	}
	return lighting.NewSpectrum(nm, power)
}
