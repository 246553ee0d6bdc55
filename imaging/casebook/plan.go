package casebook

import "encoding/json"

// largestPlan is the size in bytes beyond which a plan is refused.
const largestPlan = 4 << 20

// SavePlan keeps a plan drawn on a photograph, as JSON in a form that is the
// planner's own. Revisions are as with SaveMarks.
func (b *Casebook) SavePlan(photograph int64, observer, plan string) error {
	if _, err := b.Photograph(photograph); err != nil {
		return err
	}
	if err := checkPlan(plan); err != nil {
		return err
	}
	return b.save(keptPlans, photograph, observer, plan)
}

func checkPlan(plan string) error {
	if len(plan) > largestPlan {
		return refuse("the plan is larger than %d MB; draw it simpler", largestPlan>>20)
	}
	if !json.Valid([]byte(plan)) {
		return refuse("the plan is no JSON; draw it again")
	}
	return nil
}

// Plan is the latest plan of an observer on a photograph; false if there is none.
func (b *Casebook) Plan(photograph int64, observer string) (string, bool, error) {
	return b.latest(keptPlans, photograph, observer)
}

// PlannedBy is who has planned on a photograph, in alphabetical order.
func (b *Casebook) PlannedBy(photograph int64) ([]string, error) { return b.by(keptPlans, photograph) }

// PlanHistory is all revisions of an observer's plan, oldest first.
func (b *Casebook) PlanHistory(photograph int64, observer string) ([]Revision, error) {
	return b.history(keptPlans, photograph, observer)
}
