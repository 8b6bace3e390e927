package frame

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestWordsOfAPDF(t *testing.T) {
	require.Equal(t, "\xb5mol/(m\xb2 s), -4 \xb0C, a\x96b, ?", inWestern("µmol/(m² s), −4 °C, a–b, ☃"))
}
