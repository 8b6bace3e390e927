package fromplan

import (
	"fmt"
	"io"

	"cloche.example/examples/internal/input"
	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
)

// Weather reads the named file of hourly weather, - for in. A file that does not
// tell its site has that of the plan; fill closes gaps of at most 3 hours.
func Weather(p *plan.Plan, name string, fill bool, in io.Reader) (*weather.Series, error) {
	file, err := input.Open(name, in)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	q := p.Site
	site := weather.Site{Name: p.Name, Latitude: q.Latitude, Longitude: q.Longitude, Zone: q.TimeZone, Altitude: q.Altitude}
	s, err := weather.Read(file, weather.Options{Fill: fill, Site: &site, Zone: &site.Zone})
	if err != nil {
		return nil, fmt.Errorf("%s: %w", input.Name(name), err)
	}
	return s, nil
}
