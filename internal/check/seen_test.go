package check

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestTheListOfSourcesIsWhole(t *testing.T) {
	have := map[string]bool{}
	for _, s := range Sources() {
		require.NotEmpty(t, s.Begins)
		require.NotEqual(t, Unsaid, s.Seen, s.Begins)
		require.False(t, have[s.Begins], "%s stands twice", s.Begins)
		have[s.Begins] = true
		require.Equal(t, s, SourceOf(s.Begins))
	}
}

func TestHowARowWasSeen(t *testing.T) {
	for _, c := range []struct {
		row  Row
		seen Seen
	}{
		{Row{Where: "Thimijan83.Table3/sodium"}, SecondHand},
		{Row{Where: "Thimijan83/0.45 x 4.57"}, Apart}, // the longer beginning
		{Row{Where: "Thimijan83.Table3/sodium", Why: "from memory"}, FromMemory},
		{Row{Where: "Thimijan83.Table3/sodium", Seen: InPrint, Why: "not from memory"}, InPrint},
		{Row{Where: "a book of no name/1"}, Unsaid},
	} {
		require.Equal(t, c.seen, c.row.seen(), c.row.Where)
	}
	for words, seen := range map[string]Seen{"ISO 13370, from memory": FromMemory, "quoted by others": SecondHand, "trade size": Practice, "1 - transmittance": Apart, "EN 673": InPrint} {
		require.Equal(t, seen, seenInTable(words), words)
	}
	require.Equal(t, "computed independently", Apart.String())
	require.Equal(t, "Seen(9)", Seen(9).String())
}

func TestARowMustNameItsTestAndHowItWasSeen(t *testing.T) {
	line := Row{Where: "Nag.Ex1", Printed: "1.0"}.line("", 1)
	require.ErrorContains(t, whole([][]string{line}), "Nag.Ex1 names no test")
	line = Row{Where: "a book of no name/1", Printed: "1.0"}.line("TestX", 1)
	require.ErrorContains(t, whole([][]string{line}), "how was the value seen?")
}
