"""The price where midnight falls into the shift, so that lateness depends on the hour."""

from tests.visits.domain.planning.hand_made import job, monday, shift, week
from tests.visits.domain.planning.offers.standing import standing
from visits.domain.planning.offers.find_offers import find_offers

NIGHT = shift(start=monday("20:00"), end="2026-03-03T06:00:00+00:00")
WHOLE = {"start": monday("20:00"), "end": "2026-03-03T06:00:00+00:00"}


def test_the_price_is_that_of_the_best_hour_in_the_room():
    late = {"due": "2026-03-02", "late_cost_per_day": 900}
    made, new = standing(
        week(job("a", windows=[WHOLE], **late), job("new", windows=[WHOLE]), shifts=[NIGHT]), (0,)
    )
    assert made.figures(0).late is None
    for offer in find_offers(made, new):
        assert (offer.added.weight, offer.added.money) == (2400, 2400)


def test_a_room_after_midnight_makes_the_other_one_late():
    late = {"due": "2026-03-02", "late_cost_per_day": 900}
    morning = {"start": "2026-03-03T00:00:00+00:00", "end": "2026-03-03T02:00:00+00:00"}
    evening = {"start": monday("22:30"), "end": "2026-03-03T06:00:00+00:00"}
    made, new = standing(
        week(job("a", windows=[evening], **late), job("new", windows=[morning]), shifts=[NIGHT]), (0,)
    )
    before, after = sorted(find_offers(made, new), key=lambda offer: offer.place.order, reverse=True)
    assert (before.place.order, after.place.order) == ((1, 0), (0, 1))
    assert before.added.weight - before.added.money == 900
    assert after.added.weight == after.added.money
