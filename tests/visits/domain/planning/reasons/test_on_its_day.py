"""Due days, and days that are the only ones, against the documents themselves."""

from datetime import date, datetime
from zoneinfo import ZoneInfo

from hypothesis import given

from tests.visits.domain.planning.hand_made import job, shift, week, window
from tests.visits.domain.planning.reasons.weeks_in_hand import MANY, NEVER, InHand, cost, inserted
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.reasons.on_its_day import due, only_day
from visits.domain.planning.reasons.standing import standings

TUESDAY = {
    "start": "2026-03-03T07:00:00+00:00",
    "end": "2026-03-03T17:30:00+00:00",
}


def allowed(problem, each):
    """Shifts whose crew may do the job and that hold it inside one window."""
    for at, day in enumerate(problem["shifts"]):
        begins, ends = (datetime.fromisoformat(day[key]) for key in ("start", "end"))
        for window_ in each["windows"]:
            first, last = (datetime.fromisoformat(window_[key]) for key in ("start", "end"))
            room = (min(last, ends) - max(first, begins)).total_seconds() / 60
            if room >= each["minutes"] and day["crew"] in each.get("crews", [day["crew"]]):
                yield at
                break


@MANY
@given(small_weeks(most_jobs=4, least_jobs=1))
def test_the_only_day_is_the_only_one_by_trying_every_other(problem):
    in_hand = InHand(problem)
    for standing in standings(in_hand.board, in_hand.week):
        each = problem["jobs"][standing.job]
        found = [reason.code for reason in only_day(standing)]
        homes = list(allowed(problem, each))
        zone = ZoneInfo(problem["timezone"])
        days = {
            datetime.fromisoformat(problem["shifts"][at]["start"]).astimezone(zone).date() for at in homes
        }
        fits = any(
            cost(problem, at, tried) < NEVER
            for at in range(len(in_hand.week))
            if at != standing.shift
            for tried in inserted(in_hand.week[at], standing.job)
        )
        if "fixed" in each:
            assert found == []
        elif len(homes) == 1:
            assert found == ["only-shift"]
        elif len(days) == 1:
            assert found == ["only-day"]
        else:
            assert found == ([] if fits else ["only-fits-here"])


@MANY
@given(small_weeks(most_jobs=4, least_jobs=1))
def test_due_is_said_on_the_last_day_and_after_it_and_never_before(problem):
    in_hand = InHand(problem)
    zone = ZoneInfo(problem["timezone"])
    for standing in standings(in_hand.board, in_hand.week):
        each = problem["jobs"][standing.job]
        said = {reason.code: reason.figures for reason in due(standing)}
        start = datetime.fromtimestamp(standing.stop.start / 10, zone).date()
        late = (start - date.fromisoformat(each["due"])).days if "due" in each else -1
        assert set(said) == ({"late"} if late > 0 else {"due-day"} if late == 0 else set())
        if late > 0:
            assert said["late"]["days"] == late
            assert said["late"]["money"] == late * each.get("late_cost_per_day", 0)


def only(problem):
    in_hand = InHand(problem)
    return [(r.code, dict(r.figures)) for r in only_day(standings(in_hand.board, in_hand.week)[0])]


def test_the_strongest_true_word_is_used():
    two_days = [shift(), shift(id="tue", **TUESDAY)]
    two_vans = [shift(), shift(id="ben", crew="ben")]
    both = [window(), TUESDAY]
    assert only(week(job("a"), shifts=two_days)) == [("only-shift", {"shift": "mon", "shifts": 2})]
    assert only(week(job("a"), shifts=two_vans)) == [("only-day", {"day": "2026-03-02"})]
    assert only(week(job("a", windows=both), shifts=two_days)) == []
    full = job("b", minutes=500, windows=[TUESDAY])
    assert only(week(job("a", windows=both, minutes=300), full, shifts=two_days)) == [
        ("only-fits-here", {"tried": 1})
    ]


def test_the_first_late_day_is_the_one_after_the_due_day():
    in_hand = InHand(week(job("a", due="2026-03-02", late_cost_per_day=7)))
    (reason,) = due(standings(in_hand.board, in_hand.week)[0])
    assert reason.document() == {
        "code": "due-day",
        "due": "2026-03-02",
        "late_from": "2026-03-03",
        "money": 7,
    }
