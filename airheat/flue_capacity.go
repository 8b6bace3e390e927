package airheat

// A gas of the flue. The heat capacity of each is the Shomate form of the
// JANAF tables [Janaf98]: cp = A + B t + C t² + D t³ + E/t² J/(mol K), t = T/1000.
type gas uint8

const (
	gasCO2 gas = iota
	gasH2O
	gasSO2
	gasN2
	gasO2
	gasCO
	gases
)

type shomate struct {
	a, b, c, d, e float64
	below         float64 // K, upper end of this piece; of the last one, beyond any flue gas here
}

// shomates holds one or two pieces for each gas [Janaf98]. The fits of CO2,
// SO2 and CO begin at 298 K, that of water vapour at 500 K; they are used from
// 240 K on. At 298.15 K they give the tabulated heat capacity within 0.02 %,
// water vapour included.
var shomates = [gases][2]shomate{
	gasCO2: {{24.99735, 55.18696, -33.69137, 7.948387, -0.136638, 1200}, {}},
	gasH2O: {{30.09200, 6.832514, 6.793435, -2.534480, 0.082139, 1700}, {}},
	gasSO2: {{21.43049, 74.35094, -57.75217, 16.35534, 0.086731, 1200}, {}},
	gasN2:  {{28.98641, 1.853978, -9.647459, 16.63537, 0.000117, 500}, {19.50583, 19.88705, -8.598535, 1.369784, 0.527601, 2000}},
	gasO2:  {{31.32234, -20.23531, 57.86644, -36.50624, -0.007374, 700}, {30.03235, 8.772972, -3.988133, 0.788313, -0.741599, 2000}},
	gasCO:  {{25.56759, 6.096130, 4.054656, -2.671301, 0.131021, 1300}, {}},
}

// heat returns the integral of cp from T1 to T2, K, in J/mol.
func (g gas) heat(T1, T2 float64) float64 {
	s := &shomates[g]
	if T2 <= s[0].below {
		return s[0].integral(T2) - s[0].integral(T1)
	}
	if T1 >= s[0].below {
		return s[1].integral(T2) - s[1].integral(T1)
	}
	return s[0].integral(s[0].below) - s[0].integral(T1) + s[1].integral(T2) - s[1].integral(s[0].below)
}

func (s *shomate) integral(T float64) float64 {
	t := T / 1000
	return 1000 * (t*(s.a+t*(s.b/2+t*(s.c/3+t*s.d/4))) - s.e/t)
}
