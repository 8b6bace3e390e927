package main

import (
	"errors"
	"fmt"

	"cloche.example/internal/demo"
	"cloche.example/internal/domain"
	"cloche.example/internal/report"
	"cloche.example/ventilation"
)

var (
	suns  = []float64{200, 400, 600, 800, 1000} // W/m² of floor, outside
	winds = []float64{0, 1, 2, 4, 8}            // m/s at the ridge
)

// network is the house with one square metre of vent in all.
func (h house) network() (*ventilation.Network, error) {
	fraction := domain.Range{Min: 0.01, Max: 0.99, Unit: "fraction", Source: "both vents open"}
	area := domain.Range{Min: 1, Max: 1e5, Unit: "m²", Source: "houses"}
	height := domain.Range{Min: 0.5, Max: 20, Unit: "m", Source: "houses"}
	share := domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "definition"}
	discharge := domain.Range{Min: 0.01, Max: 1, Unit: "dimensionless", Source: "of a vent that is open"}
	above := domain.Range{Min: h.low, Max: (domain.Range{Min: -10, Max: 50, Unit: "m", Source: "protected-cropping houses"}).Max, Unit: "m", Source: "not below the side vents"}
	err := errors.Join(
		fraction.Check("-side-share", h.share),
		area.Check("-floor", h.floor),
		height.Check("-mean-height", h.volumeOf),
		(domain.Range{Min: -10, Max: 50, Unit: "m", Source: "protected-cropping houses"}).Check("-low", h.low),
		above.Check("-high", h.high),
		discharge.Check("-discharge", h.discharge),
		(domain.Range{Min: -3, Max: 2, Unit: "dimensionless", Source: "stagnation is 1, suction peaks reach about -3; above 1 where the reference wind is that of a lower level"}).Check("-cp-side", h.windward),
		(domain.Range{Min: -3, Max: 2, Unit: "dimensionless", Source: "stagnation is 1, suction peaks reach about -3; above 1 where the reference wind is that of a lower level"}).Check("-cp-ridge", h.lee),
		(domain.Range{Min: 0, Max: 1e7, Unit: "W/K", Source: "houses up to some hectares"}).Check("-loss", h.loss),
		share.Check("-absorbed", h.absorbed),
		share.Check("-transpired", h.transpired),
		(domain.Range{Min: -60, Max: 80, Unit: "°C", Source: "weather and houses; a kelvin value falls outside"}).Check("-outside", h.outside),
		(domain.Range{Min: 60000, Max: 110000, Unit: "Pa", Source: "sites up to 4,000 m; a value in kPa or hPa falls outside"}).Check("-pressure", h.pressure),
		(domain.Range{Min: 0.01, Max: 80, Unit: "K", Source: "a rise over the outside air"}).Check("-rise", h.rise),
	)
	if err != nil {
		return nil, err
	}
	return ventilation.NewNetwork([]ventilation.Opening{
		{Name: "side", Height: h.low, Area: h.share, Discharge: h.discharge, PressureCoefficient: h.windward},
		{Name: "ridge", Height: h.high, Area: 1 - h.share, Discharge: h.discharge, PressureCoefficient: h.lee},
	}, nil, nil)
}

func (h house) report() (*report.Report, error) {
	n, err := h.network()
	if err != nil {
		return nil, err
	}
	r := &report.Report{}
	r.Title("Vent area for an allowed rise of %s K", report.Number(h.rise, 1))
	r.Note(demo.Note)
	r.Section("The house")
	r.Value("floor area", h.floor, 1, "m²")
	r.Value("outside air", h.outside, 1, "°C")
	r.Value("sun absorbed", h.absorbed, 2, "of the sun outside")
	r.Value("of it to transpiration", h.transpired, 2, "fraction")
	r.Value("cover and ground carry off", h.loss*h.rise, 0, "W at the allowed rise")
	r.Value("ridge vents above the side vents", h.high-h.low, 2, "m")
	header := []string{"sun W/m²"}
	for _, u := range winds {
		header = append(header, fmt.Sprintf("%g m/s", u))
	}
	header = append(header, "air changes 1/h")
	var area, share [][]string
	for _, sun := range suns {
		load := ventilation.Load{Solar: sun * h.floor * h.absorbed, Transpired: h.transpired, Loss: h.loss}
		a, s := []string{fmt.Sprintf("%g", sun)}, []string{fmt.Sprintf("%g", sun)}
		changes := ""
		for _, u := range winds {
			need, err := n.AreaForRise(load, ventilation.Outdoors{Temperature: h.outside, Pressure: h.pressure, Wind: u}, h.rise)
			if errors.Is(err, ventilation.ErrNoSolution) {
				a, s = append(a, "none does"), append(s, "none does")
				continue
			}
			if err != nil {
				return nil, err
			}
			mark := ""
			if !need.Stable {
				mark = "!"
			}
			a = append(a, report.Number(need.Area, 2)+mark)
			s = append(s, report.Number(100*need.Area/h.floor, 1)+mark)
			changes = report.Number(ventilation.AirChanges(need.Volume, h.floor*h.volumeOf), 1)
		}
		area, share = append(area, append(a, changes)), append(share, append(s, changes))
	}
	r.Section("Free vent area needed, side and ridge together, m²")
	r.Table(header, area)
	r.Section("The same in per cent of the floor")
	r.Table(header, share)
	r.Section("Notes")
	r.Note("Air balance on true densities, temperature and flow solved together; air dry, the share that goes to transpiration fixed. A mark ! says that wind opposes the stack there and the house would leave that state.")
	r.Note("Free area, not the area of the frame: a flap at 30 degrees frees about two thirds of its frame, and with an insect screen over it passes a half to a quarter of what the bare vent does.")
	r.Note("Pressure and discharge coefficients are uncertain by 20 %% and more. Vents must close in storm; structure and drives follow local codes and licensed practice.")
	return r, nil
}
