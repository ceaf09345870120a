from datetime import timedelta

from tests.factories import TUESDAY_TEN, blocked_foot, finish, put_down, trimmed_foot, under_way
from visits.domain.crush_entry import FindingEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale
from visits.selectors.crush_past import past_trims

SORE = FindingEntry(LesionCode.DD, Claw.SKIN, 10, 2, DDStage.M2)


def past_of(house, visit):
    return past_trims(house.scope, visit, house.business.zone).get(house.cow.pk, [])


def visits_on(house, *days):
    for day in days:
        visit = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=day))
        put_down(visit, house.cow, trimmed_foot())
        finish(visit, house.trimmer)


def test_what_was_seen_and_done_is_told_in_few_words(house):
    first = under_way(house.farm, house.van)
    foot = trimmed_foot(Foot.RIGHT_HIND, findings=(SORE,), sensitive_tissue=True)
    put_down(first, house.cow, blocked_foot(), foot, mobility_scale=MobilityScale.UK, mobility_score=2)
    finish(first, house.trimmer)
    (told,) = past_of(house, under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=30)))
    assert told == {
        "day": "2026-03-03",
        "kind_label": "corrective trim",
        "score": 2,
        "scale": "UK0-3",
        "found": [
            "left hind outer, zone 4: sole ulcer, 2",
            "right hind skin, zone 10: digital dermatitis M2, 2",
        ],
        "done": ["left hind inner: wooden block"],
        "for_vet": ["right hind: blood drawn or sensitive tissue open: work on this foot stopped"],
    }


def test_the_last_three_are_told_newest_first(house):
    visits_on(house, 0, 20, 40, 60)
    now = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=80))
    assert [told["day"] for told in past_of(house, now)] == ["2026-05-02", "2026-04-12", "2026-03-23"]


def test_this_very_visit_is_not_past(house):
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, trimmed_foot())
    assert past_of(house, visit) == []
