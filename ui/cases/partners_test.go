package cases

import (
	"testing"

	"ogive/imaging/casebook"
)

func photograph(id, sitting int64, day casebook.Date, side, view string) casebook.Photograph {
	return casebook.Photograph{ID: id, Sitting: sitting, Date: day, Hand: side, View: view}
}

func TestTheOtherHandOfTheSameDayIsOfferedFirstAndTheOperatedHandComesFirst(t *testing.T) {
	all := []casebook.Photograph{
		photograph(1, 1, "2023-03-13", "left", "dorsal"), photograph(2, 1, "2023-03-13", "right", "dorsal"),
		photograph(3, 2, "2024-04-02", "left", "dorsal"), photograph(4, 2, "2024-04-02", "right", "dorsal"), photograph(5, 2, "2024-04-02", "right", "palmar"),
		photograph(6, 3, "2026-03-30", "left", "dorsal"), photograph(7, 3, "2026-03-30", "", ""), photograph(8, 3, "2026-03-30", "right", "dorsal"),
	}
	hands, sittings := pairs(casebook.LeftHand, all[2], all)
	if len(hands) != 3 || hands[0].b.ID != 4 || hands[1].b.ID != 2 || hands[2].b.ID != 8 || hands[0].a.ID != 3 {
		t.Errorf("the other hand is offered as %v", hands)
	}
	if len(sittings) != 2 || sittings[0].a.ID != 3 || sittings[0].b.ID != 1 || sittings[1].a.ID != 6 || sittings[1].b.ID != 3 {
		t.Errorf("other sittings are offered as %v", sittings)
	}
	hands, _ = pairs(casebook.LeftHand, all[3], all)
	if hands[0].a.ID != 3 || hands[0].b.ID != 4 || hands[0].other.ID != 3 {
		t.Errorf("from the other hand, the operated one is offered as %+v", hands[0])
	}
	if hands, sittings := pairs(casebook.LeftHand, all[6], all); hands != nil || sittings != nil {
		t.Error("a photograph of which the hand is not said is compared")
	}
}
