package airheat_test

import (
	"os"
	"testing"

	"cloche.example/internal/check"
)

func TestMain(m *testing.M) {
	os.Exit(check.Main(m, "../examples/internal/reference/checks/airheat.csv"))
}
