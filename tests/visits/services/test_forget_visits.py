"""Visits go with all that was noted on them; those that are kept lose every word."""

from tests.factories import TUESDAY_TEN, blocked_foot, finish, make_farm, put_down, under_way
from visits.models import CrushWriting, LoneWatch, Trim, Visit, VisitEvent, WatchEvent
from visits.services.forget_visits import forget_visits


def done(house, farm, days):
    visit = under_way(farm, house.van, TUESDAY_TEN.replace(day=3 + days), note="The gate sticks")
    put_down(visit, farm.cows.within(house.scope).first(), blocked_foot())
    return finish(visit, house.trimmer)


def test_a_visit_that_is_kept_keeps_its_day_and_counts_and_no_word(house):
    kept, other = done(house, house.farm, 0), done(house, house.farm, 1)
    gone = forget_visits(farm=house.farm, kept={kept.pk})
    row = Visit.objects.within(house.scope).get()
    assert row.pk == kept.pk != other.pk
    assert (row.note, row.signed_by, row.head_count, row.finished_at) == (
        "",
        "",
        kept.head_count,
        kept.finished_at,
    )
    assert (gone["visits"], gone["cows at the crush"]) == (1, 2)
    assert not Trim.objects.with_taken_back(house.scope).exists()
    assert not CrushWriting.objects.within(house.scope).exists()
    assert not VisitEvent.objects.within(house.scope).exists()


def test_a_cow_that_was_taken_back_goes_too(house):
    visit = done(house, house.farm, 0)
    Trim.objects.within(house.scope).update(taken_back_at=visit.finished_at)
    forget_visits(farm=house.farm, kept=())
    assert not Trim.objects.with_taken_back(house.scope).exists()


def test_the_visits_of_another_farm_stay_as_they_are(house):
    second = make_farm(house.business, "High Croft", by=house.owner)
    second.cows.create(business=house.business, number="505")
    other = done(house, second, 0)
    assert forget_visits(farm=house.farm, kept=()) == {}
    assert Visit.objects.within(house.scope).get(pk=other.pk).note == "The gate sticks"
    assert Trim.objects.within(house.scope).count() == 1


def test_who_was_watched_over_there_and_who_was_told_is_forgotten(house):
    visit = done(house, house.farm, 0)
    words = {"business": house.business, "began_at": visit.started_at, "expected_finish": visit.started_at}
    watch = LoneWatch.objects.create(visit=visit, trimmer=house.trimmer, **words)
    WatchEvent.objects.create(
        business=house.business, watch=watch, at=visit.started_at, words="The farm is told."
    )
    gone = forget_visits(farm=house.farm, kept={visit.pk})
    assert gone["watches over lone work"] == 1
    assert not WatchEvent.objects.within(house.scope).exists()
