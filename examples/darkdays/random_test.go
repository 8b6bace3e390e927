package main

import (
	"testing"

	"cloche.example/examples/internal/campaign"
)

// Whatever the plan, it is answered or refused in one line.
func TestRandomPlans(t *testing.T) { campaign.Run(t, with("")) }
