package main

import (
	"errors"

	"cloche.example/ventilation"
)

// row is one outside temperature under one order.
type row struct {
	outside float64
	opened  []ventilation.ColdAir // by the openings asked for
	all     ventilation.ColdAir   // every vent wide open
	widest  ventilation.ColdAir   // as far as the crop bears
	wanted  ventilation.ColdAir   // for the air wanted
	small   bool                  // all vents do not let it in
}

// draught is the answer: rows by order, then by outside temperature.
type draught struct {
	*house
	rows [][]row
}

// solve computes every row.
func (h *house) solve() (*draught, error) {
	d := &draught{house: h}
	for _, o := range h.orders {
		var rows []row
		for _, t := range h.outside {
			r, err := h.row(t, o)
			if err != nil {
				return nil, err
			}
			rows = append(rows, r)
		}
		d.rows = append(d.rows, rows)
	}
	return d, nil
}

func (h *house) row(outside float64, o order) (r row, err error) {
	r.outside = outside
	for _, share := range h.opened {
		a, err := h.at(outside, o, share/100)
		if err != nil {
			return r, err
		}
		r.opened = append(r.opened, a)
	}
	if r.all, err = h.at(outside, o, float64(len(o.groups))); err != nil {
		return r, err
	}
	v := h.vents
	v.Outside = outside
	if r.widest, err = v.Widest(o.groups); err != nil || h.air <= 0 {
		return r, err
	}
	r.wanted, err = v.ForFlow(o.groups, h.air/3600*h.density(outside))
	if errors.Is(err, ventilation.ErrNoSolution) {
		r.small, err = true, nil
	}
	return r, err
}

// share is how far the first vents of an order are open, and the others,
// fraction.
func (h *house) share(o order, a ventilation.ColdAir) (first, others float64) {
	first = a.Fractions[o.groups[0][0]]
	if len(o.groups) > 1 {
		others = a.Fractions[o.groups[1][0]]
	}
	return first, others
}
