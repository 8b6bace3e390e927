package weather

import (
	"math"
	"time"

	"cloche.example/internal/sun"
)

// Limits of the checks of radiation.
const (
	nightLight    = 20 // W/m², of an hour without sun, that still counts as dusk or as an offset
	apartAbsolute = 50 // W/m²
	apartRelative = 0.2
)

// radiation checks the radiation against the sun and fills beam and diffuse
// where they are missing.
func (s *Series) radiation(t *table, f *faults) error {
	site, err := sun.NewSite(s.Site.Latitude, s.Site.Longitude, s.Site.Altitude)
	if err != nil {
		return err
	}
	s.Sun = site.HoursTo(nil, s.Time)
	a := &s.Account
	for i, h := range s.Sun {
		g, b, d := s.Global[i], s.Direct[i], s.Diffuse[i]
		if h.Sine <= 0 {
			most, what := g, t.headers[global]
			if b > most {
				most, what = b, t.headers[direct]
			}
			if most > nightLight && dark(site, s.Time[i]) {
				number, ask := t.line[i], "is the time zone right?"
				if !s.SiteInFile {
					ask = "the file names no site: is the one that it was given, with its time zone, that of the weather?"
				}
				f.addf(max(number, 1), "%s is %.4g W/m² in the hour from %s, when the sun is down; %s", what, most, s.Time[i].Format("2006-01-02 15:04"), ask)
			}
			s.Direct[i], s.Diffuse[i] = 0, g
			continue
		}
		sinE := h.Sine / h.Lit
		switch noB, noD := math.IsNaN(b), math.IsNaN(d); {
		case noB && noD:
			a.Erbs++
			b, d = h.Split(g)
		case noB:
			a.FromDiffuse++
			if b = math.Min(h.Extraterrestrial, math.Max(0, g-d)/sinE); h.Elevation < sun.LowSun {
				b, d = 0, g
			}
		case noD:
			a.FromDirect++
			d = math.Max(0, g-b*sinE)
		default:
			if miss := math.Abs(d + b*sinE - g); miss > apartAbsolute && miss > apartRelative*g {
				a.Apart++
			}
		}
		s.Direct[i], s.Diffuse[i] = b, d
	}
	return nil
}

// dark reports whether the sun stays down from half an hour before the hour to
// half an hour after it.
func dark(site sun.Site, start time.Time) bool {
	beside := site.HoursTo(nil, []time.Time{start.Add(-30 * time.Minute), start.Add(30 * time.Minute)})
	return beside[0].Lit == 0 && beside[1].Lit == 0
}
