package main

import (
	"fmt"
	"slices"
	"strings"
)

// table is a part of the account, a row a month and one for all.
type table struct {
	name  string
	heads []string
	rows  [][]string
}

var monthNames = [...]string{"all", "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"}

// tables are the account month by month.
func (a *answer) tables() []table {
	return []table{
		a.table("Heat that goes, kWh", []string{"month", "outside °C", "inside °C", "to air", "to sky", "ground", "tubes", "water in tubes", "structure", "leaks", "venting", "for humidity", "vapour"}, func(t *sums) []string {
			return append([]string{num(t.Outside, 1), num(t.Inside, 1)}, whole(t.CoverAir, t.CoverSky, t.Ground, t.Tubes, t.TubeWater, t.Structure, t.Leakage, t.Venting, t.Drying, t.Latent)...)
		}),
		a.table("Heat that comes, kWh", []string{"month", "sun in covers", "sun inside", "lamps", "CO2 burner", "liquid water", "heater", "its energy"}, func(t *sums) []string {
			return whole(t.SunCover, t.Sun, t.Lamps, t.Burner, t.Water, t.Heater, t.Fuel)
		}),
		a.table("Light and electricity", []string{"month", "daylight mol/m²", "lamps mol/m²", "days short", "lamps kWh", "heater's fan kWh", "vent fans kWh", "tubes' fan kWh"}, func(t *sums) []string {
			return []string{num(t.DayLight, 0), num(t.LampLight, 0), fmt.Sprintf("%d of %d", t.Dark, t.Days), num(t.LampPower, 0), num(t.FanPower, 0), num(t.VentPower, 0), num(t.TubePower, 0)}
		}),
		a.table("Water, kg", []string{"month", "crop", "floor", "fog", "burner", "condensed", "in tubes", "fell as mist", "vented", "irrigation", "sprayed", "pads"}, func(t *sums) []string {
			return whole(t.Drawn, t.Soil, t.Fog, t.Burnt, t.Condensed, t.InTubes, t.Fell, t.Vented, t.Given, t.Sprayed, t.Pads)
		}),
		a.table("Carbon dioxide", []string{"month", "mean µmol/mol", "given kg", "burner's fuel kWh", "taken up kg", "carried off kg"}, func(t *sums) []string {
			return []string{num(t.CO2, 0), num(t.Dosed, 1), num(t.BurnerFuel, 0), num(t.TakenUp, 1), num(t.CarbonOut, 1)}
		}),
		a.table("Hours", []string{"month", "heated", "vents open", "fans run", "cold", "hot", "humid", "dripping"}, func(t *sums) []string {
			return []string{fmt.Sprint(t.Heated), fmt.Sprint(t.VentHours), fmt.Sprint(t.FanHours), fmt.Sprint(t.Cold), fmt.Sprint(t.Hot), fmt.Sprint(t.Humid), fmt.Sprint(t.Dripping)}
		}),
	}
}

func (a *answer) table(name string, heads []string, row func(*sums) []string) table {
	t := table{name: name, heads: heads}
	for i := range a.Account.Months {
		m := &a.Account.Months[i]
		t.rows = append(t.rows, append([]string{monthNames[m.Month]}, row(m)...))
	}
	t.rows = append(t.rows, append([]string{monthNames[0]}, row(&a.Account.Whole)...))
	t.drop("tubes", "water in tubes", "in tubes", "CO2 burner", "burner", "burner's fuel kWh", "vent fans kWh", "tubes' fan kWh", "fog", "sprayed", "pads", "fans run", "given kg")
	return t
}

// drop leaves out those of the named columns that hold nothing but zeros: what the
// house does not have.
func (t *table) drop(names ...string) {
	for k := len(t.heads) - 1; k > 0; k-- {
		empty := slices.Contains(names, t.heads[k])
		for _, row := range t.rows {
			empty = empty && strings.Trim(row[k], "0.-") == ""
		}
		if !empty {
			continue
		}
		t.heads = slices.Delete(t.heads, k, k+1)
		for i := range t.rows {
			t.rows[i] = slices.Delete(t.rows[i], k, k+1)
		}
	}
}

func whole(v ...float64) (out []string) {
	for _, x := range v {
		out = append(out, num(x, 0))
	}
	return out
}

var dayHeads = []string{"hour", "outside °C", "sun W/m²", "inside °C", "humidity %", "heater W", "vents %", "lamps %", "light µmol/(m² s)", "condensed kg/h"}

func dayRows(day []dayHour) (rows [][]string) {
	for _, h := range day {
		rows = append(rows, []string{h.Time[11:], num(h.Outside, 1), num(h.Sun, 0), num(h.Inside, 1), num(100*h.Humidity, 0), num(h.Heater, 0), num(100*h.Opening, 0), num(100*h.Lamps, 0), num(h.Light, 0), num(h.Wet, 2)})
	}
	return rows
}
