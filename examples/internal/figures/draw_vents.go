package figures

import "cloche.example/examples/internal/page"

// cool and warm are the arrows of air that enters and of air that leaves.
var (
	cool = page.Stroke{Color: css(page.PenOf(0).Color), Width: 2.5, Arrow: true}
	warm = page.Stroke{Color: css(page.PenOf(1).Color), Width: 2.5, Arrow: true}
)

// gable draws a house across, from the floor up to its eaves and ridge, m above
// grade, the floor below grade where it is dug in, with beside, m, of the land at
// either side.
func gable(span, eave, ridge, floor, beside float64) *page.Drawing {
	margin := 0.12 * (span + 2*beside)
	d := page.NewDrawing(-beside, floor-0.5*margin, span+beside, ridge+margin, 420)
	d.Line(page.Stroke{Width: 0.8}, -beside, 0, 0, 0)
	d.Line(page.Stroke{Width: 0.8}, span, 0, span+beside, 0)
	d.Line(page.Stroke{Width: 1.6}, 0, floor, 0, eave, span/2, ridge, span, eave, span, floor)
	d.Line(page.Stroke{Width: 1, Dash: "4 3"}, 0, floor, span, floor)
	return d
}
