package main

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// readYear reads one number a line, W/m², the mean of each hour of a year from
// the first of January, local standard time; lines that begin with # are left
// out.
func readYear(r io.Reader) ([]float64, error) {
	var global []float64
	lines := bufio.NewScanner(r)
	for n := 1; lines.Scan(); n++ {
		text := strings.TrimSpace(lines.Text())
		if text == "" || text[0] == '#' {
			continue
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return nil, fmt.Errorf("line %d: %.40q is not a number of W/m²", n, text)
		}
		if global = append(global, v); len(global) > 8784 {
			return nil, fmt.Errorf("line %d: more than the 8784 hours of a leap year", n)
		}
	}
	return global, lines.Err()
}
