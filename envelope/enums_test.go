package envelope

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// Every choice has a name of its own, and what is none shows its number.
func TestChoicesHaveNames(t *testing.T) {
	for _, c := range []struct {
		name func(i uint8) fmt.Stringer
		last uint8
	}{
		{func(i uint8) fmt.Stringer { return Edge(i) }, uint8(EdgeVertical)},
		{func(i uint8) fmt.Stringer { return HeatFlow(i) }, uint8(FlowDown)},
		{func(i uint8) fmt.Stringer { return InnerFace(i) }, uint8(InnerAuto)},
		{func(i uint8) fmt.Stringer { return LeakageModel(i) }, uint8(LeakagePressure)},
		{func(i uint8) fmt.Stringer { return Place(i) }, uint8(places) - 1},
		{func(i uint8) fmt.Stringer { return OutsideConvection(i) }, uint8(OutsideGiven)},
		{func(i uint8) fmt.Stringer { return InsideConvection(i) }, uint8(InsideGiven)},
		{func(i uint8) fmt.Stringer { return Section(i) }, uint8(sections) - 1},
		{func(i uint8) fmt.Stringer { return FacetKind(i) }, uint8(facetKinds) - 1},
	} {
		seen := map[string]bool{}
		for i := range c.last + 1 {
			s := c.name(i).String()
			require.NotRegexp(t, "[0-9]$|^$", s[len(s)-1:]+"x")
			require.False(t, seen[s], s)
			seen[s] = true
		}
		require.Contains(t, c.name(c.last+1).String(), fmt.Sprint(c.last+1))
	}
}
