package ventilation_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Hours under a drawn screen in which the air above it is warmer than film and
// screen, then hours in which the screen is under some drops: the balances have an
// answer, and its heat is envelope's.
func TestHoursUnderALeakingScreen(t *testing.T) {
	hours := []struct {
		cover           string
		see             envelope.RadiantRoom
		t, w, sun, wind float64
		sky, ground     float64
		s               ventilation.Setting
	}{
		{"single infrared film", envelope.RadiantEnclosure, 29.586155116221228, 0.005186489336220932, 0, 5.698791820801685, 24.83875813929329, 8.02657191659145,
			ventilation.Setting{Heat: 5635.074882784439, Screen: true}},
		{"twin-wall sheet 6 mm", envelope.RadiantGiven, 23.19443073586823, 0.0064868546503100925, 0, 0, 15.850530177698298, 12.553545580338874,
			ventilation.Setting{Opening: 0.1, Heat: 1269.8417350584298, Screen: true}},
		{"twin-wall sheet 10 mm", envelope.RadiantEnclosure, 27.49830610964311, 0.01181270664653947, 261.0321261124634, 1.3813835011480302, 23.19186855357946, 15.334086928626604,
			ventilation.Setting{Opening: 0.7110335154316878, Heat: 1991.419457534108, Screen: true}},
		{"twin-wall sheet 10 mm", envelope.RadiantEnclosure, 21.37184479167263, 0.007494111115904387, 0, 3.8088217682361343, 17.181661038378504, 14.76904471969089,
			ventilation.Setting{Heat: 1811.303878865627, Screen: true}},
		{"double film, infrared inside", envelope.RadiantEnclosure, 5.768299040514215, 0.004902634938604435, 492.62188221685165, 0, -13.256076141703943, 13.793324294792125,
			ventilation.Setting{Opening: 0.22115399954814152, Heat: 4719.586529213355, Radiant: 3376.502708155067, Screen: true}},
		{"single infrared film", envelope.RadiantEnclosure, -6.636106838743379, 0.0019853704362240918, 519.2722467556616, 1.1899399728102957, -20.07062787919275, 13.419251581254008,
			ventilation.Setting{Opening: 0.1, Heat: 4621.399649822675, Screen: true}},
		{"double glass", envelope.RadiantEnclosure, 14.580539884456549, 0.007483538844159086, 422.9219015456855, 3.656446937690279, -9.617616519175563, 10.789313441314366,
			ventilation.Setting{Opening: 0.08613781752745164, Heat: 437.1049653991621, Radiant: 24.064553480700468, Screen: true}},
	}
	for _, x := range hours {
		cover, found := envelope.FindCover(x.cover)
		require.True(t, found, x.cover)
		out, err := psychro.FromHumidityRatio(x.t, x.w, 101325)
		require.NoError(t, err)
		h := realClimate(t, cover.Cover)
		h.Real.House = realHouse(t, cover.Cover, x.see)
		w := ventilation.Weather{Air: out, Sun: x.sun, Wind: x.wind, Sky: x.sky, Ground: x.ground}
		state, err := climate(t, h).Solve(w, x.s)
		require.NoError(t, err, x.cover)
		require.False(t, state.CoversBetween, x.cover)
		sameCovers(t, h, w, x.s, state)
	}
}
