package main

import "math"

// account is the year in sums, with what closes them.
type account struct {
	Months  []sums  `json:"months"`
	Whole   sums    `json:"whole"`
	Peak    peak    `json:"peak"`
	Coldest moment  `json:"coldest"`
	Hottest moment  `json:"hottest"`
	Closure closure `json:"closure"`
}

// peak is the hour that asks most of the heater.
type peak struct {
	At   moment  `json:"at"`
	Heat float64 `json:"heat_w"`
	Wind float64 `json:"wind_m_s"`
	Sky  float64 `json:"sky_c"`
	Vent float64 `json:"through_vents_w"` // with the vapour
	Kept float64 `json:"into_structure_and_ground_w"`
	Rise float64 `json:"set_point_rose_k"` // since the hour before
}

// moment is one hour.
type moment struct {
	Time    string  `json:"time"`
	Inside  float64 `json:"inside_c"`
	Outside float64 `json:"outside_c"`
	Sun     float64 `json:"sun_w_m2"`
	hour    int
}

// full is within what two hours count as of one power, W; the colder of them is
// the peak.
const full = 1e-3

func (y *year) account() *account {
	a := &account{Whole: sums{}}
	index := [13]int{}
	low, high := math.Inf(1), math.Inf(-1)
	w := y.house.weather
	for i, at := range w.Time {
		m := int(at.Month())
		if index[m] == 0 {
			a.Months = append(a.Months, sums{Month: m})
			index[m] = len(a.Months)
		}
		a.Months[index[m]-1].add(y, i)
		a.Whole.add(y, i)
		if y.Failed[i] {
			continue
		}
		x := &y.State[i]
		if q := y.heat(i); q > a.Peak.Heat+full || q > a.Peak.Heat-full && q > 0 && w.Temperature[i] < a.Peak.At.Outside {
			a.Peak = peak{y.moment(i), q, y.Wind[i], y.Sky[i], split(x, y.Opening[i]).vent + x.AirLatent*(1-x.Leakage/max(x.DryAir, 1e-12)),
				x.ToStructure + x.Ground, y.setPoint(i) - y.setPoint(max(0, i-1))}
		}
		if d := x.Temperature - y.setPoint(i); d < low {
			low, a.Coldest = d, y.moment(i)
		}
		if x.Temperature > high {
			high, a.Hottest = x.Temperature, y.moment(i)
		}
	}
	y.days(a, index)
	for i := range a.Months {
		a.Months[i].mean()
	}
	a.Whole.mean()
	a.Closure = y.closure()
	return a
}

func (t *sums) mean() {
	t.Outside /= float64(max(1, t.Hours))
	t.Inside /= float64(max(1, t.Hours-t.Failed))
	t.CO2 /= float64(max(1, t.Hours-t.Failed))
}

func (y *year) moment(i int) moment {
	w := y.house.weather
	return moment{w.Time[i].Format(stamp), y.State[i].Temperature, w.Temperature[i], w.Global[i], i}
}

// days counts whole days and those short of the crop's least light.
func (y *year) days(a *account, index [13]int) {
	least := 0.0
	if l := y.house.steady.Light; l != nil && l.Least != nil {
		least = *l.Least
	}
	sum, n := 0.0, 0
	for i, at := range y.house.weather.Time {
		if at.Hour() == 0 {
			sum, n = 0, 0
		}
		sum += (y.lit(i) + y.Burn[i]*y.house.lamps.ppfd) * 0.0036
		if n++; at.Hour() == 23 && n == 24 {
			for _, t := range []*sums{&a.Whole, &a.Months[index[at.Month()]-1]} {
				t.Days++
				count(&t.Dark, sum < least-1e-9)
			}
		}
	}
}
