"""Every minute, across all businesses."""

from datetime import UTC, datetime, timedelta

from tests.factories import NOON, TUESDAY_TEN, make_farm, make_house, make_van, planned
from tests.visits.services.lone_watch.watched import after, again, look, rules, sent, watch_of
from trimops.errands.models import Errand
from visits.domain.lone_watch.watch_states import WatchEnd
from visits.models import LoneWatch, Visit
from visits.services.lone_watch.end_watch import end_watch
from visits.services.lone_watch.find_due_watches import find_due_watches

LAST_DAY = datetime(9999, 12, 28, 12, tzinfo=UTC)


def asked(house):
    rows = Errand.objects.within(house.scope).filter(job="visits.look_at_watch")
    return [errand.ids["watch_id"] for errand in rows]


def by_plan(house):
    return list(LoneWatch.objects.within(house.scope).filter(is_by_plan=True))


def test_what_is_due_is_looked_at_and_nothing_else(house):
    watch = watch_of(house)
    assert find_due_watches(at=after(watch, 29)) == 0
    assert find_due_watches(at=after(watch, 30)) == 1
    assert asked(house) == [watch.pk]


def test_a_look_that_waits_for_a_worker_is_not_asked_for_again(house):
    watch = watch_of(house)
    for minutes in range(30, 90):
        find_due_watches(at=after(watch, minutes))
    assert asked(house) == [watch.pk]


def test_visits_of_the_plan_are_watched_from_their_hour(house):
    visit = planned(house.farm, house.van)
    find_due_watches(at=TUESDAY_TEN - timedelta(minutes=1))
    assert not by_plan(house)
    for minutes in (0, 1, 2):
        find_due_watches(at=TUESDAY_TEN + timedelta(minutes=minutes))
    (watch,) = by_plan(house)
    assert (watch.visit, watch.trimmer, watch.began_at) == (visit, house.trimmer, TUESDAY_TEN)


def test_one_that_he_ended_does_not_come_back(house):
    planned(house.farm, house.van)
    find_due_watches(at=TUESDAY_TEN)
    (watch,) = by_plan(house)
    end_watch(watch=watch, how=WatchEnd.WELL, because="Ada is well.", at=after(watch, 5))
    find_due_watches(at=after(watch, 6))
    assert [again(watch).state] == [row.state for row in by_plan(house)] == ["ended"]


def test_what_was_planned_before_the_rules_is_left_alone(house):
    """Who switches it on in the afternoon is not asked where they were in the morning."""
    early = planned(house.farm, house.van, TUESDAY_TEN)
    row = rules(house)
    row.changed_at = TUESDAY_TEN + timedelta(minutes=10)
    row.save()
    planned(
        make_farm(house.business, "High Croft", by=house.owner), house.van, TUESDAY_TEN + timedelta(hours=4)
    )
    find_due_watches(at=TUESDAY_TEN + timedelta(hours=5))
    assert [watch.visit_id for watch in by_plan(house)] != [early.pk]
    assert len(by_plan(house)) == 1


def test_plans_are_not_watched_where_nobody_wants_it(house):
    row = rules(house)
    row.watches_plan = False
    row.save()
    planned(house.farm, house.van)
    find_due_watches(at=TUESDAY_TEN)
    assert not by_plan(house)


def test_a_business_without_the_watch_costs_no_query(house, django_assert_num_queries):
    for name in ("Fell & Beck", "Moor & Tarn"):
        other = make_house(name)
        planned(other.farm, other.van)
    with django_assert_num_queries(3):
        find_due_watches(at=NOON + timedelta(days=30))


def test_a_look_that_failed_and_would_come_in_an_hour_comes_at_the_next_minute(house):
    watch = watch_of(house)
    find_due_watches(at=after(watch, 30))
    rows = Errand.objects.within(house.scope).filter(job="visits.look_at_watch")
    rows.update(due_at=after(watch, 90), tries=6)
    find_due_watches(at=after(watch, 31))
    (errand,) = rows
    assert (errand.due_at, errand.handed_out_at, errand.tries) == (after(watch, 31), None, 6)


def test_one_visit_that_cannot_be_watched_leaves_no_other_alone(house, caplog):
    """Here its end would come after the end of all time."""
    never = LAST_DAY - timedelta(hours=1)
    other = make_farm(house.business, "High Croft", by=house.owner)
    endless, sound = planned(house.farm, house.van), planned(other, house.van, NOON + timedelta(days=2))
    visits = Visit.objects.within(house.scope)
    visits.update(planned_start=never, planned_finish=LAST_DAY)
    visits.filter(pk=endless.pk).update(expected_minutes=30_000)
    find_due_watches(at=LAST_DAY)
    assert [watch.visit_id for watch in by_plan(house)] == [sound.pk]
    assert f"not watched: visit {endless.pk}" in caplog.text


def test_a_visit_that_went_to_another_van_is_watched_for_whoever_drives_that(house):
    visit = planned(house.farm, house.van)
    find_due_watches(at=TUESDAY_TEN)
    (first,) = by_plan(house)
    van = make_van(house.business, house.owner, "Van 2")
    Visit.objects.within(house.scope).filter(pk=visit.pk).update(van=van)
    look(first, 30)
    assert (again(first).ended_how, sent(house)) == (WatchEnd.NOT_THERE, [])
    find_due_watches(at=after(first, 31))
    (second,) = [watch for watch in by_plan(house) if not watch.is_over]
    assert (second.van, second.trimmer, second.began_at) == (van, house.owner, TUESDAY_TEN)
    look(second, 31)
    assert sent(house)[-1].address == house.owner.email
