package figures

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"cloche.example/examples/internal/page"
)

// themes are figures that tell of one thing from several sides, across
// subjects; each points to the others of its themes.
var themes = [][]string{
	{"reading-a-chart", "wet-bulb", "bulbs", "hours", "rivals"},
	{"altitude", "altitudes", "fan-rules", "heater-duty"},
	{"rivals", "supercooled", "bulbs"},
	{"heating", "drying-by-heating", "hot-air", "heater-duty"},
	{"cooling", "bypass", "condensation", "sweating-duct"},
	{"mixing", "recirculation", "fog", "cold-air"},
	{"humidifying", "wet-pad", "pad-wall", "fog"},
	{"transport", "leaf-deficit", "convection", "wet-bulb"},
	{"night-sky", "film-at-night", "radiant-room", "arch-house"},
	{"double-film", "film-at-night", "wet-or-dry", "film-house"},
	{"wet-or-dry", "condensation", "will-it-drip", "own-humidity"},
	{"curtain", "screen-edges", "shade", "film-house", "insect-screen"},
	{"own-cover", "declared-glazing", "coated-glazing"},
	{"light-by-angle", "sun-through-cover", "daylight-on-a-bed"},
	{"arch-house", "film-house", "lean-to", "dug-in", "leakage"},
	{"leakage", "door", "lobby"},
	{"timber-wall", "lean-to", "slab-and-pit"},
	{"bare-floor", "slab-and-pit", "soil-store", "dug-in"},
	{"heater-duty", "air-or-water", "ridge-return", "heat-and-vents"},
	{"heating-pipe", "air-or-water", "duct-heat"},
	{"flue-loss", "wet-wood", "fuels", "fire-and-air"},
	{"fire-and-air", "carbon-dioxide"},
	{"friction", "duct-pieces", "duct-size", "fan-and-duct", "branches", "dividing-tee"},
	{"duct-heat", "sweating-duct", "film-tube"},
	{"film-tube", "warm-jet", "cold-air"},
	{"warm-up", "hours-to-frost", "freezing-out", "night-set-back"},
	{"soil-store", "rock-bed", "heat-and-vents"},
	{"season", "degree-days", "night-set-back", "year-budget"},
	{"year-budget", "film-house", "sun-through-cover", "dark-day"},
	{"inverse-square", "spots", "shape-factors", "beam-and-exponent"},
	{"beam-and-exponent", "spots", "photon-web"},
	{"spots", "map-and-evenness", "ways-to-hang", "fewest-fixtures"},
	{"map-and-evenness", "dimming", "room-light", "daily-light"},
	{"lux", "spectra", "candela-to-photons", "photometric-file", "photon-web"},
	{"daily-light", "dark-day", "dark-days", "daylight-on-a-bed"},
	{"sun-path", "sun-paths", "daily-radiation", "beam-and-sky"},
	{"beam-and-sky", "sun-through-cover"},
	{"stack", "wind-and-stack", "one-level", "flap", "vent-area"},
	{"exposure", "wind-and-stack", "three-states"},
	{"insect-screen", "flap", "vent-area"},
	{"noon", "vent-area", "shade", "grass", "own-controller"},
	{"dug-in", "one-level"},
	{"own-controller", "heat-and-vents"},
	{"leaf-deficit", "grass", "carbon-dioxide"},
	{"drying-by-heating", "own-humidity", "door"},
	{"fan-rules", "pad-wall"},
	{"glass-night", "heating-pipe", "winter-day", "radiant-room"},
	{"spring-day", "winter-day", "day-and-night", "noon"},
	{"day-and-night", "drying-morning", "drying-by-heating", "own-humidity"},
	{"openings", "flap", "one-level", "lobby"},
	{"transpiration", "rival-hours", "grass", "leaf-deficit"},
}

// also returns the figures of the same themes, in their order, at most six.
func also(name string) (names []string) {
	for _, t := range themes {
		if !slices.Contains(t, name) {
			continue
		}
		for _, n := range t {
			if n != name && !slices.Contains(names, n) && len(names) < 6 {
				names = append(names, n)
			}
		}
	}
	return names
}

// beside returns the figures before and after one within its subject.
func beside(f Figure) (before, after *Figure) {
	all := All()
	i := slices.IndexFunc(all, func(g Figure) bool { return g.Name == f.Name })
	if i > 0 && all[i-1].Subject == f.Subject {
		before = &all[i-1]
	}
	if i >= 0 && i+1 < len(all) && all[i+1].Subject == f.Subject {
		after = &all[i+1]
	}
	return before, after
}

// anchor is a link to a figure's page.
func anchor(name, words string) string {
	return fmt.Sprintf(`<a href="%s.html">%s</a>`, name, template.HTMLEscapeString(words))
}

// writePath writes the way back and to the figures beside this one.
func (f Figure) writePath(p *page.Page) {
	way := []string{`<a href="index.html">All worked figures</a>`, template.HTMLEscapeString(f.Subject)}
	before, after := beside(f)
	if before != nil {
		way = append(way, "before: "+anchor(before.Name, before.Title))
	}
	if after != nil {
		way = append(way, "next: "+anchor(after.Name, after.Title))
	}
	fmt.Fprintf(raw{p}, "<nav aria-label=\"Site\"><p>%s</p></nav>\n", strings.Join(way, " · "))
}

// writeAlso writes the related figures.
func (f Figure) writeAlso(p *page.Page) {
	names := also(f.Name)
	if len(names) == 0 {
		return
	}
	p.Section("See also")
	out := raw{p}
	fmt.Fprint(out, "<ul>\n")
	for _, n := range names {
		if g, err := Find(n); err == nil {
			fmt.Fprintf(out, "<li>%s: %s</li>\n", anchor(g.Name, g.Title), template.HTMLEscapeString(g.Question))
		}
	}
	fmt.Fprint(out, "</ul>\n")
}
