package norms

// Verdict says how one figure of one web stands to a limit.
type Verdict struct {
	// Figure is the judged figure: "index", "span" or "slope".
	Figure string
	// Finding is "too deep", "too shallow", "too wide", "too narrow",
	// "too steep", "too flat" or "within limits".
	Finding string
	// Certain is true only if the whole 95 per cent interval lies beyond the
	// limit (or, for "within limits", within both).
	Certain bool
	// Limit is the limit the figure was judged by, the nearest one for "within
	// limits": a ratio for the index, millimetres for the span, degrees for the
	// slope.
	Limit float64
	// Against says where the limit comes from: "published values", "other webs
	// of the same hand" or "other hand".
	Against string
}
