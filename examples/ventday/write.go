package main

import (
	"fmt"
	"math"
	"time"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/internal/report"
)

// answer says what the vents do, and what to decide.
func (d *day) answer() []string {
	hot := d.plan.SetPoints.Limits.Hot
	hand, auto, open := d.courses[byHand], d.courses[automatic], d.courses[wideOpen]
	of := func(c course) string {
		return fmt.Sprintf("hottest %s °C at %s, %s h above %s °C", report.Number(c.High, 1), clock(c.HighAt.Hours()), report.Number(c.Above.Hours(), 1), report.Number(hot, 0))
	}
	all := []string{
		fmt.Sprintf("By hand, opened to %s from %s to %s: %s.", report.Number(d.plan.VentControl.Hand, 2), clock(d.plan.VentControl.HandFrom), clock(d.plan.VentControl.HandUntil), of(hand)),
		fmt.Sprintf("Automatic: %s.", of(auto)),
	}
	if !math.IsNaN(d.openBy) {
		all = append(all, fmt.Sprintf("A shut house passes %s °C from %s on: open by then.", report.Number(d.plan.SetPoints.Day.VentTemperature, 0), clock(d.openBy)))
	}
	return append(all, d.verdict(open))
}

// verdict says whether the vents suffice when they stand wide open, and what
// else would help.
func (d *day) verdict(open course) string {
	outside := math.Inf(-1)
	for _, s := range d.steps {
		outside = max(outside, s.Weather.Air.Temperature())
	}
	over := open.High - outside
	text := fmt.Sprintf("Wide open they leave the house at most %s °C, with %s °C at most outside. ", report.Number(open.High, 1), report.Number(outside, 1))
	switch {
	case open.Above == 0:
		return text + "They are enough on such a day."
	case d.plan.Shade == nil && d.plan.Fog == nil && over < 1:
		return text + "The air outside is the limit: shade or fog would cool further, wider vents would not."
	case d.plan.Shade == nil && d.plan.Fog == nil:
		return text + "They are not enough on such a day: try wider vents, -shade-transmittance or -fog."
	}
	return text + "With the plan's shade or fog too they are not enough on such a day."
}

func (d *day) warnings() (all []string) {
	if open := d.courses[wideOpen]; open.Above > 0 {
		all = append(all, d.verdict(open))
	}
	return all
}

// write prints the report.
func (d *day) write() *report.Report {
	var p report.Report
	p.Title("A summer day, vents by hand and automatic: %s", d.plan.Name)
	p.Note("%s", d.plan.Note)
	p.Section("Answer")
	for _, s := range d.answer() {
		p.Note("%s", s)
	}
	for _, s := range d.warnings() {
		if s != d.verdict(d.courses[wideOpen]) {
			p.Note("Warning: %s", s)
		}
	}
	d.given(&p)
	p.Section("Hour by hour")
	p.Table([]string{"time", "sun W/m²", "outside °C", "wind m/s", "hand", "°C", "kPa", "auto", "high", "low", "°C", "kPa", "leaves °C", "changes 1/h", "set by"}, d.table())
	p.Note("Opening as a fraction of the area of all vents, and of that of the high and of the low ones; inside air, vapour pressure deficit; leaves, air changes and what set the vents are those of the automatic house. The time is that of the step's start.")
	p.Section("The day side by side")
	p.Table([]string{"", d.courses[0].name, d.courses[1].name, d.courses[2].name}, d.summary())
	p.Section("Notes")
	p.Note("Steady balance of heat, water and air in each step, through the plan's covers and crop; heat stored in soil and structure is left out, which would lower the afternoon's peak and lift the evening. %s, and come to rest; fans run, past wet pads where the plan has them, while open vents alone leave the house warmer than they are to hold it; a thermal screen stays open. \"Wide open\" is the best these vents can do by day.", d.turn())
	p.Note("The clear 15th of %s follows the plan's summer day; its formulas stand in weather.go. Discharge and pressure coefficients are uncertain by 20 %% and more.", d.date().Month())
	p.Section("Cautions")
	p.Note("A closed house in the sun overheats people and plants within minutes: leave a vent that opens without power, and watch for heat stroke. Gusts exceed the mean wind: vents must be held and shut in time; structure and drives follow local codes and licensed practice.")
	if d.plan.Fog != nil {
		p.Note("Fogging wants clean water, and leaves dry before night: warm stagnant water breeds germs that harm people who breathe the mist.")
	}
	if len(d.plan.VentFans) > 0 {
		p.Note("Fans start without warning: guard them, and switch them off at an isolator before reaching in.")
	}
	return &p
}

// turn says in which order the vents move.
func (d *day) turn() string {
	high, low := fromplan.InTurn(d.plan, 1e-3)
	switch {
	case high > low:
		return "Vents in ridge and roof open first, those in the walls when they stand wide"
	case low > high:
		return "Vents in the walls open first, those in ridge and roof when they stand wide"
	}
	return "All vents move together"
}

// given prints the vents and how they are moved.
func (d *day) given(p *report.Report) {
	p.Section("The house and its vents")
	p.Value("floor", d.house.Shape.FloorArea, 1, "m²")
	p.Value("leaf area over floor area", d.plan.Crop.LeafArea, 1, "ratio")
	for _, v := range d.plan.Vents {
		p.Text(v.Name, report.Number(v.Length*v.Height, 2), fmt.Sprintf("m², %s, %s, %.2f m above the ground outside", v.Kind, v.Place, v.Centre))
	}
	for _, f := range d.plan.VentFans {
		p.Text(f.Name, report.Number(f.Flow, 2), "m³/s, blows "+f.Blows)
	}
	c := d.plan.VentControl
	p.Text("by hand", report.Number(c.Hand, 2), fmt.Sprintf("of the opening from %s to %s, else shut", clock(c.HandFrom), clock(c.HandUntil)))
	p.Text("automatic", report.Number(d.plan.SetPoints.Day.VentTemperature, 1), fmt.Sprintf("°C begins to open, wide open %g K above", c.Band))
	p.Text("  in wind", report.Number(c.InWind, 2), fmt.Sprintf("of the opening from %g m/s on, lowered from %g m/s", c.WindHigh, c.WindLow))
	p.Text("  in rain", report.Number(c.InRain, 2), "of the opening")
	if q := d.plan.Shade; q != nil {
		p.Text("shade above", report.Number(q.AboveSun, 0), fmt.Sprintf("W/m² of sun: %s, %g of the cover, lets %g through", q.Place, q.Drawn, q.Transmittance))
	}
	if q := d.plan.Fog; q != nil {
		p.Text("fog above", report.Number(q.AboveSun, 0), fmt.Sprintf("W/m² of sun: %g g/(m² h) of water, %g of it evaporates", q.Spray, q.Evaporated))
	}
}

// table has one row an hour, whatever the step.
func (d *day) table() (rows [][]string) {
	every := max(1, int(time.Hour/d.step))
	hand, auto := d.courses[byHand].Points, d.courses[automatic].Points
	for i := 0; i < len(auto); i += every {
		w, a, b := d.steps[i].Weather, hand[i], auto[i]
		high, low := fromplan.InTurn(d.plan, b.Vents.Opening)
		rows = append(rows, []string{
			clock(b.Time.Hours()), report.Number(w.Sun, 0), report.Number(w.Air.Temperature(), 1), report.Number(w.Wind, 1),
			report.Number(a.Vents.Opening, 2), report.Number(a.State.Temperature, 1), report.Number(a.State.Deficit/1000, 2),
			report.Number(b.Vents.Opening, 2), report.Number(high, 2), report.Number(low, 2), report.Number(b.State.Temperature, 1), report.Number(b.State.Deficit/1000, 2),
			report.Number(b.State.CanopyTemperature, 1), report.Number(b.State.AirChanges, 0), b.Vents.By.String(),
		})
	}
	return rows
}

// summary has one row a figure and one column a course.
func (d *day) summary() [][]string {
	rows := [][]string{
		{"mean inside, °C"}, {"hottest, °C"}, {"  at"}, {"coolest, °C"},
		{"hours above " + report.Number(d.plan.SetPoints.Limits.Hot, 0) + " °C"}, {"degree-hours above, K h"},
		{"deficit least, kPa"}, {"deficit most, kPa"}, {"hours humid, below 0.3 kPa"}, {"hours dry, above 1.2 kPa"},
		{"transpired, kg"}, {"fog and pads evaporated, kg"}, {"settled as mist, kg"}, {"moves of the vents"},
	}
	for _, c := range d.courses {
		for i, v := range []string{
			report.Number(c.Mean, 1), report.Number(c.High, 1), clock(c.HighAt.Hours()), report.Number(c.Low, 1),
			report.Number(c.Above.Hours(), 1), report.Number(c.DegreeHours, 1),
			report.Number(c.DeficitLow/1000, 2), report.Number(c.DeficitHigh/1000, 2), report.Number(c.Humid.Hours(), 1), report.Number(c.Dry.Hours(), 1),
			report.Number(c.Transpired, 0), report.Number(c.Water, 0), report.Number(c.Dripped, 0), fmt.Sprint(c.Moves),
		} {
			rows[i] = append(rows[i], v)
		}
	}
	return rows
}

// clock writes an hour of the day as 08:30.
func clock(h float64) string {
	m := int(h*60 + 0.5)
	return fmt.Sprintf("%02d:%02d", m/60, m%60)
}
