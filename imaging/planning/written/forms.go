package written

// The forms of the JSON, in the order in which they are written. A figure that
// can't be told is absent.
type (
	planForm struct {
		Figures    int       `json:"ogive_plan_figures"`
		Plan       string    `json:"plan"`
		Photograph string    `json:"photograph"`
		Side       string    `json:"hand"`
		View       string    `json:"view"`
		Scale      scaleForm `json:"scale"`
		Webs       []webForm `json:"webs"`
		Notes      []string  `json:"notes,omitempty"`
	}
	scaleForm struct {
		PerPixel *estimation `json:"mm_per_px"`
		Warnings []string    `json:"warnings"`
	}
	webForm struct {
		Web          int               `json:"web"`
		Proposal     *proposalForm     `json:"proposal,omitempty"`
		ThirdsRule   string            `json:"thirds_rule_withdrawn,omitempty"`
		Chosen       string            `json:"chosen,omitempty"`
		Join         *estimation       `json:"join_mm,omitempty"`
		Alternatives []alternativeForm `json:"alternatives"`
		Skin         *skinForm         `json:"skin,omitempty"`
		Remarks      []string          `json:"remarks,omitempty"`
	}
	proposalForm struct {
		From     string      `json:"from"`
		Index    *estimation `json:"index"`
		Span     *estimation `json:"span_mm"`
		CrownU95 number      `json:"crown_u95_mm"`
		Reasons  []string    `json:"reasons"`
		Warnings []string    `json:"warnings,omitempty"`
	}
	alternativeForm struct {
		Name   string    `json:"name"`
		Arch   *archForm `json:"arch,omitempty"`
		Flap   *flapForm `json:"flap,omitempty"`
		Dorsal *cutForm  `json:"dorsal_zigzag,omitempty"`
		Palmar *cutForm  `json:"palmar_zigzag,omitempty"`
		Trade  string    `json:"zigzag_trade,omitempty"`
		Notes  []string  `json:"notes,omitempty"`
	}
	archForm struct {
		Shape      string        `json:"shape"`
		Index      *estimation   `json:"index,omitempty"`
		Depth      *estimation   `json:"depth_mm,omitempty"`
		Span       *estimation   `json:"span_mm,omitempty"`
		Rise       *estimation   `json:"rise_mm,omitempty"`
		RiseToSpan *estimation   `json:"rise_to_span,omitempty"`
		Flare      *estimation   `json:"flare_deg,omitempty"`
		CrownAngle *estimation   `json:"crown_angle_deg,omitempty"`
		Verdicts   []verdictForm `json:"verdicts"`
		Patterns   []patternForm `json:"patterns"`
		Remarks    []string      `json:"remarks,omitempty"`
		Outline    []xy          `json:"outline_mm"`
		Pixels     []xy          `json:"outline_px"`
	}
	verdictForm struct {
		Figure  string `json:"figure"`
		Verdict string `json:"verdict"`
		Certain bool   `json:"certain"`
		Limit   number `json:"limit"`
		Against string `json:"against"`
	}
	patternForm struct {
		Figure string `json:"figure"`
		Says   string `json:"says"`
		Source string `json:"source"`
		Agrees bool   `json:"agrees"`
		Sure   bool   `json:"sure"`
	}
	flapForm struct {
		Kind         string      `json:"kind"`
		Length       *estimation `json:"length_mm"`
		Base         *estimation `json:"base_mm"`
		Middle       *estimation `json:"middle_width_mm"`
		Tip          *estimation `json:"tip_width_mm"`
		LengthToBase *estimation `json:"length_to_base"`
		Area         *estimation `json:"area_mm2"`
		Notes        []string    `json:"notes"`
		Outline      []xy        `json:"outline_mm"`
		Pixels       []xy        `json:"outline_px"`
	}
	cutForm struct {
		Length  *estimation `json:"length_mm"`
		Limbs   []limbForm  `json:"limbs"`
		Flaps   []tipForm   `json:"flaps"`
		Notes   []string    `json:"notes,omitempty"`
		Outline []xy        `json:"line_mm"`
		Pixels  []xy        `json:"line_px"`
	}
	limbForm struct {
		Length    *estimation `json:"length_mm"`
		Obliquity *estimation `json:"obliquity_deg"`
	}
	tipForm struct {
		TipAngle *estimation `json:"tip_deg"`
		Narrow   bool        `json:"narrow"`
	}
	skinForm struct {
		Radial        *estimation `json:"radial_girth_mm"`
		Ulnar         *estimation `json:"ulnar_girth_mm"`
		Joined        *estimation `json:"joined_outline_mm"`
		Ratio         *estimation `json:"apart_to_joined"`
		PerMillimetre *estimation `json:"short_per_mm_of_join_mm"`
		Shortage      *estimation `json:"shortage_cm2"`
		Flaps         *estimation `json:"flap_cm2"`
		Graft         *estimation `json:"graft_cm2"`
		Patches       []patchForm `json:"patches"`
		Remarks       []string    `json:"remarks"`
	}
	patchForm struct {
		Digit   string `json:"digit"`
		Width   number `json:"width_mm"`
		Length  number `json:"length_mm"`
		Outline []xy   `json:"outline_mm"`
	}
)
