"""The knives that the phone at the crush is told of, without what its own visit says."""

from datetime import timedelta
from uuid import uuid4

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from tests.factories import (
    TUESDAY_TEN,
    finish,
    make_blade,
    make_cow,
    make_house,
    make_van,
    put_down,
    trimmed_foot,
    under_way,
)
from visits.models import BladeEvent, BladeSaid, BladeTurn, Sharpening
from visits.selectors.business_figures import figures_of
from visits.selectors.crush_blades import crush_blades
from visits.services.kit.settle_blade import settle_blade

WEEK = timedelta(days=7)
MINUTE = timedelta(minutes=1)
FIGURE = 25.0


def said(visit, at, **parts):
    turn = BladeTurn.objects.create(
        business=visit.business, visit=visit, record=uuid4(), at=at, by=visit.van.trimmer
    )
    for part, blades in parts.items():
        for blade in blades:
            BladeSaid.objects.create(business=visit.business, turn=turn, blade=blade, part=part)
            settle_blade(blade=blade)
    return turn


def cows(house, visit, *minutes, feet=True):
    """Cows noted so many minutes after the visit began."""
    for minute in minutes:
        cow = make_cow(house.farm, f"{visit.pk}{minute}")
        at = visit.started_at + minute * MINUTE
        put_down(visit, cow, *([trimmed_foot()] if feet else []), at=at)


@pytest.fixture
def knives(house):
    return make_blade(house.van, "Red handle"), make_blade(house.van, "Blue handle")


@pytest.fixture
def before(house, knives):
    """Red cut three cows and dragged, then blue cut two; a cow that was only looked at counts for none."""
    red, blue = knives
    visit = under_way(house.farm, house.van)
    said(visit, visit.started_at, in_hand=[red])
    cows(house, visit, 10, 20, 30)
    cows(house, visit, 25, feet=False)
    said(visit, visit.started_at + 35 * MINUTE, in_hand=[blue], went_dull=[red])
    cows(house, visit, 40, 50)
    return finish(visit, house.trimmer)


def told(house, visit, now=None):
    rows = crush_blades(house.scope, visit, now or visit.started_at, figures_of(house.scope).kit)
    return {row["name"]: row for row in rows}


def test_cows_of_the_visits_before_what_is_dull_and_what_was_in_hand_last(house, before):
    rows = told(house, under_way(house.farm, house.van, TUESDAY_TEN + WEEK))
    stands = {name: (row["cows_on_edge"], row["is_dull"], row["is_in_hand"]) for name, row in rows.items()}
    assert stands == {"Red handle": (3, True, False), "Blue handle": (2, False, True)}
    assert {row["counted_on"] for row in rows.values()} == {FIGURE}
    assert {row["may_cut"] for row in rows.values()} == {True}


def test_what_this_visit_says_is_left_to_the_phone(house, before, knives):
    red, blue = knives
    visit = under_way(house.farm, house.van, TUESDAY_TEN + WEEK)
    start = told(house, visit)
    said(visit, visit.started_at + MINUTE, in_hand=[red], chipped=[blue])
    cows(house, visit, 10, 20)
    assert told(house, visit, visit.started_at + 30 * MINUTE) == start


def test_a_sharpening_begins_an_edge_of_no_cows_from_that_moment(house, before, knives):
    evening = TUESDAY_TEN + timedelta(hours=9)
    Sharpening.objects.create(business=house.business, blade=knives[0], at=evening)
    row = told(house, under_way(house.farm, house.van, TUESDAY_TEN + WEEK))["Red handle"]
    assert (row["cows_on_edge"], row["is_dull"], row["edge_since"]) == (0, False, evening.isoformat())


def test_blades_of_other_vans_the_retired_and_those_at_grinding_are_not_told_of(house, knives):
    make_blade(make_van(house.business, house.trimmer, "Second"), "On the other van")
    make_blade(make_house("Other").van, "Another business's")
    away = BladeEvent.objects.create(
        business=house.business, blade=knives[0], state="at_grinding", at=TUESDAY_TEN
    )
    visit = under_way(house.farm, house.van, TUESDAY_TEN + WEEK)
    assert set(told(house, visit)) == {"Blue handle"}
    BladeEvent.objects.create(
        business=house.business, blade=away.blade, state="in_use", at=TUESDAY_TEN + MINUTE
    )
    assert set(told(house, visit)) == {"Blue handle", "Red handle"}


def test_a_crack_of_years_ago_is_a_crack(house, knives):
    long_ago = finish(under_way(house.farm, house.van, TUESDAY_TEN - 150 * WEEK), house.trimmer)
    cracked = make_blade(house.van, "Cracked long ago", bought_on=(TUESDAY_TEN - 160 * WEEK).date())
    said(long_ago, long_ago.started_at, cracked=[cracked])
    assert settle_blade(blade=cracked).state == "out_of_use"
    visit = under_way(house.farm, house.van, TUESDAY_TEN + WEEK)
    told = crush_blades(house.scope, visit, visit.started_at + MINUTE, figures_of(house.scope).kit)
    names = [blade["name"] for blade in told]
    assert names
    assert "Cracked long ago" not in names


def test_one_named_on_this_visit_stays_in_the_papers_whatever_became_of_it(house, knives):
    borrowed = make_blade(make_van(house.business, house.trimmer, "Second"), "Borrowed")
    visit = under_way(house.farm, house.van, TUESDAY_TEN + WEEK)
    said(visit, visit.started_at, in_hand=[borrowed])
    BladeEvent.objects.create(business=house.business, blade=borrowed, state="retired", at=TUESDAY_TEN)
    assert told(house, visit)["Borrowed"]["may_cut"] is False


def test_as_many_questions_for_ten_knives_and_their_words_as_for_two(house, before, knives):
    visit = under_way(house.farm, house.van, TUESDAY_TEN + WEEK)
    assert visit.business.zone
    with CaptureQueriesContext(connection) as few:
        told(house, visit)
    for number in range(8):
        knife = make_blade(house.van, f"Knife {number}")
        said(before, TUESDAY_TEN + number * MINUTE, in_hand=[knife], went_dull=[knives[1]])
        Sharpening.objects.create(business=house.business, blade=knife, at=TUESDAY_TEN + 5 * MINUTE)
    with CaptureQueriesContext(connection) as many:
        assert len(told(house, visit)) == 10
    assert len(many) == len(few) <= 8
