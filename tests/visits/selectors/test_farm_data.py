"""What a farm takes out is all of its own, nothing of another's, and counts what was noted."""

from datetime import timedelta

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from farms.models import Calving, Contact
from tests.factories import (
    MONDAY,
    NOON,
    blocked_foot,
    finish,
    make_cow,
    make_farm,
    make_house,
    named,
    photo_of,
    put_down,
    trimmed_foot,
    under_way,
)
from trimops.kernel.scope import Scope
from visits.domain.feet import Foot
from visits.domain.mobility import MobilityScale
from visits.models import MobilityScore, MobilityScoring, WashDown
from visits.selectors.farm_data import farm_tables, file_words, herd_out, photo_files


@pytest.fixture
def house(db):
    return make_house()


def some_work(farm, house, cows=1, days=0):
    """A finished visit with a blocked foot a cow; a calving and a score of each."""
    start = NOON + timedelta(days=days)
    herd = [make_cow(farm, f"{farm.pk}{days}{number}") for number in range(cows)]
    visit = under_way(farm, house.van, start, cows=[named(herd[0])])
    scoring = MobilityScoring.objects.create(
        business=farm.business,
        farm=farm,
        scored_on=MONDAY,
        scale="UK0-3",
        noted_at=NOON,
        noted_by=house.owner,
    )
    for cow in herd:
        entry = {"mobility_scale": MobilityScale.UK, "mobility_score": 2}
        trim = put_down(visit, cow, blocked_foot(), trimmed_foot(Foot.LEFT_FORE), **entry)
        Calving.objects.create(business=farm.business, cow=cow, calved_on=MONDAY, lactation=3)
        MobilityScore.objects.create(business=farm.business, scoring=scoring, cow=cow, score=0)
    WashDown.objects.create(
        business=farm.business,
        visit=visit,
        record=trim.client_id,
        substance="peracetic acid",
        dilution="1 %",
        contact_minutes=10,
        washed_at=start,
        by=house.trimmer,
    )
    photo_of(trim)
    return finish(visit, house.trimmer)


def counts(scope, farm, zone):
    return {table.name: len(table.rows) for table in farm_tables(scope, farm, zone)}


def test_every_table_holds_what_was_noted_on_the_farm_and_nothing_of_the_farm_beside_it(house):
    zone = house.business.zone
    second = make_farm(house.business, "High Croft", by=house.owner)
    some_work(house.farm, house, cows=2)
    Contact.objects.create(business=house.business, farm=house.farm, name="H. Manager", part="Owner")
    before = counts(house.scope, house.farm, zone)
    some_work(second, house, cows=5, days=1)
    assert before == counts(house.scope, house.farm, zone)
    assert before == counts(Scope(house.business.pk, house.farm.pk), house.farm, zone), (
        "the farm sees as much"
    )
    assert before == {
        **{"cows": 3, "calvings": 2, "scores": 2, "visits": 1, "cows asked for": 1, "wash-downs": 1},
        "messages": 0,
        **{"blocks": 2, "re-checks": 2, "trims": 2, "feet": 4, "findings": 2, "actions": 10},
        **{"for the vet": 0, "farm": 18, "people": 1, "milkings": 14, "hygiene": 1},
    }


def test_a_client_of_one_farm_gets_nothing_of_another_even_if_it_is_handed_in(house):
    second = make_farm(house.business, "High Croft", by=house.owner)
    some_work(second, house)
    elsewhere = Scope(house.business.pk, house.farm.pk)
    found = counts(elsewhere, second, house.business.zone)
    assert {name for name, number in found.items() if number} == {"farm"}, "which was handed in"
    assert herd_out(elsewhere, second).trims == ()
    assert list(photo_files(elsewhere, second, house.business.zone)) == []


def test_a_finding_is_told_in_words_and_codes_with_its_cow_and_day(house):
    visit = some_work(house.farm, house)
    tables = {table.name: table for table in farm_tables(house.scope, house.farm, house.business.zone)}
    (row,) = tables["findings"].rows
    told = dict(zip(tables["findings"].headings, row, strict=True))
    assert told["Foot"] == "left hind"
    assert told["Claw"] == "outer claw"
    assert told["Code of the ICAR claw health atlas"] == "SU"
    assert told["Place"] == "where sole meets heel"
    assert told["Day"] == visit.started_at.date()


def test_a_foot_is_told_with_its_measures_and_each_sign_under_its_own_heading(house):
    visit = under_way(house.farm, house.van)
    foot = trimmed_foot(
        wall_mm=75, toe_angle=50, look_again_days=0, has_pain=True, deep_infection=True, for_vet="hot"
    )
    put_down(visit, house.cow, foot)
    tables = {table.name: table for table in farm_tables(house.scope, house.farm, house.business.zone)}
    (row,) = tables["feet"].rows
    told = dict(zip(tables["feet"].headings, row, strict=True))
    assert (told["Front wall, mm"], told["Toe angle, degrees"], told["Left to the vet"]) == (75, 50, "hot")
    assert told["Look again after days (0: no need)"] == 0
    assert {name for name, value in told.items() if value == "yes"} == {
        "Pain to the hoof testers",
        "Looks deep",
    }


def test_a_cow_that_was_taken_back_is_in_no_table_and_not_in_the_exchange(house):
    some_work(house.farm, house)
    house.farm.visits.within(house.scope).get().trims.within(house.scope).update(taken_back_at=NOON)
    found = counts(house.scope, house.farm, house.business.zone)
    for name in ("trims", "feet", "findings", "actions", "blocks", "re-checks", "for the vet"):
        assert found[name] == 0, name
    assert herd_out(house.scope, house.farm).trims == ()
    assert list(photo_files(house.scope, house.farm, house.business.zone)) == []


def test_more_cows_take_no_more_queries(house):
    def queries():
        with CaptureQueriesContext(connection) as asked:
            farm_tables(house.scope, house.farm, house.business.zone)
            herd_out(house.scope, house.farm)
        return len(asked)

    some_work(house.farm, house)
    few = queries()
    some_work(house.farm, house, cows=8, days=1)
    assert queries() == few


def test_a_photo_is_a_file_named_by_day_cow_and_foot(house):
    some_work(house.farm, house)
    ((name, picture),) = photo_files(house.scope, house.farm, house.business.zone)
    assert name.startswith("photos/2026-03-02 cow ")
    assert ", left hind, " in name
    assert picture.startswith(b"\xff\xd8")


@pytest.mark.parametrize(
    ("number", "expected"), [("12/4", "12-4"), ("../x", "---x"), ("", "-"), ("Rød 9", "Rød 9")]
)
def test_a_cows_number_makes_a_file_name_that_leads_nowhere_else(number, expected):
    assert file_words(number) == expected
