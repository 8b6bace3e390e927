package main

import (
	"context"
	"io"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
)

// mild are bright summer days whose air is cooler by so many kelvin.
func mild(t *testing.T, days int, cooler float64) *weather.Series {
	s := part(t, "07-08", days)
	for i := range s.Temperature {
		s.Temperature[i] -= cooler
		s.DewPoint[i] -= cooler
		s.Sky[i] -= 5 * cooler
	}
	return s
}

// smallVents is the demo house with so much of its vents.
func smallVents(t *testing.T, share float64) plan.Filled {
	p := plan.Demo()
	p.Plan = *scaled(&p.Plan, share)
	text := `{"vents": [`
	for i, v := range p.Vents {
		if i > 0 {
			text += ","
		}
		text += `{"name": "` + v.Name + `", "place": "` + v.Place + `", "kind": "` + v.Kind + `", "length_m": ` + num(v.Length, 3) + `, "height_m": ` + num(v.Height, 3) + `, "centre_above_ground_m": ` + num(v.Centre, 2) + `}`
	}
	return changed(t, text+`]}`)
}

func tried1(t *testing.T, p plan.Filled, s *weather.Series) (*answer, map[string]cure) {
	a, err := solve(context.Background(), p, s, options{}, io.Discard)
	require.NoError(t, err)
	cures := map[string]cure{}
	for _, c := range a.Cures {
		cures[c.Code] = c
	}
	return a, cures
}

// Where vents can cure every hot hour, those of the size that is found leave none in
// the same days solved anew, and those a step smaller leave some.
func TestTheVentsThatCure(t *testing.T) {
	s := mild(t, 4, 11)
	a, cures := tried1(t, smallVents(t, 0.15), s)
	v := a.Vents
	require.NotNil(t, v)
	require.Greater(t, v.Hot, 10)
	require.Equal(t, a.Account.Whole.Hot, v.Hot)
	require.True(t, v.All)
	require.Zero(t, v.Never+v.Outside)
	require.Greater(t, v.Factor, 1.2)
	require.Zero(t, cures["more_vents"].Hot)
	require.Empty(t, cures["shade"].Code, "not tried where vents do")
	require.InDelta(t, (v.Factor-1)*v.Had*110, *cures["more_vents"].Cost, 1e-6)
	smaller := *scaled(&a.filled.Plan, v.Factor/sizeStep/sizeStep)
	h, err := newHouse(&smaller, s)
	require.NoError(t, err)
	y, err := h.solve(context.Background())
	require.NoError(t, err)
	require.Positive(t, y.account().Whole.Hot)
	require.Contains(t, a.Decisions[1].Answer, "Vents cure all of them")
	require.Contains(t, a.Decisions[1].Cure, "0 hours left")
}

// Hot hours that the sizes leave by the hot hours alone are those of the days solved
// anew with such vents, within a few; where the air outside is too warm no size is said
// to cure, and shade, fog and pads are tried.
func TestNoVentsCureHotAir(t *testing.T) {
	s := mild(t, 6, 4)
	a, cures := tried1(t, smallVents(t, 0.3), s)
	v := a.Vents
	require.False(t, v.All)
	require.Positive(t, v.Outside)
	require.GreaterOrEqual(t, v.Never, v.Outside)
	require.InDelta(t, 1.1*v.Had, v.Sizes[0].Area, 1e-9)
	floor, most := a.year.house.steady.House.Shape.FloorArea, v.Sizes[len(v.Sizes)-1].Area
	require.LessOrEqual(t, most, 0.4*floor)
	require.Greater(t, 1.1*most, 0.4*floor)
	last := v.Hot
	for _, size := range v.Sizes {
		require.LessOrEqual(t, size.Left, last)
		last = size.Left
		if size.Area == v.Factor*v.Had {
			require.InDelta(t, size.Left, cures["more_vents"].Hot, 3)
		}
	}
	require.Equal(t, v.Never, last)
	require.Less(t, last, v.Hot)
	for _, code := range []string{"shade", "fog", "pads"} {
		require.Empty(t, cures[code].WhyNot)
		require.Less(t, cures[code].Hot, v.Hot, code)
		require.Positive(t, *cures[code].Cost)
	}
	require.Contains(t, a.Decisions[1].Answer, "No size of vents cures them all")
	require.Contains(t, a.Decisions[1].Cure, "a shade in the sun")
	_, cures = tried1(t, changed(t, `{"shade": {}, "vent_fans": [{"name": "fan", "flow_m3_s": 2}]}`), part(t, "07-08", 1))
	require.Contains(t, cures["shade"].WhyNot, "there already")
	require.Contains(t, cures["pads"].Name, "1.6 m² of pads")
	_, cures = tried1(t, changed(t, `{"vent_control": {"by": "hand", "hand_from_h": 8, "hand_until_h": 20, "hand_fraction": 0.1}}`), mild(t, 2, 4))
	require.Regexp(t, `^fans of \d\.\d m³/s and \d\.\d m² of pads$`, cures["pads"].Name)
	require.Less(t, cures["vents_by_temperature"].Hot, cures["cooler_night"].Hot)
	require.Nil(t, cures["vents_by_temperature"].Cost)
}

// A house without vents is looked at with one in its ridge.
func TestVentsWhereThereAreNone(t *testing.T) {
	_, cures := tried1(t, changed(t, `{"vents": []}`), mild(t, 2, 12))
	require.Empty(t, cures["more_vents"].WhyNot)
	require.Contains(t, cures["more_vents"].Name, "in place of 0.0")
	require.Positive(t, *cures["more_vents"].Cost)
	require.Zero(t, cures["more_vents"].Failed)
}

// An hour solved alone, with what the year had done in it, is that of the year.
func TestAnHourAgain(t *testing.T) {
	a := solved(t, plan.Demo(), part(t, "07-08", 2))
	y := a.year
	s := ventSearch{year: y, sizes: make([]*vents, 3)}
	n := 0
	for i := range y.State {
		if y.Opening[i] != 1 {
			continue
		}
		same, err := s.inside(i, 0)
		require.NoError(t, err)
		require.InDelta(t, y.State[i].Temperature, same, 0.05)
		wider, err := s.inside(i, 2)
		require.NoError(t, err)
		if same > y.house.weather.Temperature[i]+0.5 {
			require.Less(t, wider, same)
			n++
		}
	}
	require.Greater(t, n, 8)
}
