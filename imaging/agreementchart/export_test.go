package agreementchart

import "gonum.org/v1/plot"

// Ticks is the ticks of an axis.
func Ticks(low, high float64) []plot.Tick { return rounds{}.Ticks(low, high) }
