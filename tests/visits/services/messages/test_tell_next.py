"""The last cow is done: the next farm hears that the van is on its way."""

from datetime import timedelta

import pytest

from tests.factories import (
    TUESDAY_TEN,
    confirmed,
    finish,
    make_farm,
    planned,
    put_down,
    trimmed_foot,
    under_way,
)
from tests.visits.services.messages.told_farms import (
    again,
    errands,
    mailed,
    subjects,
    switch_on,
    texted,
    written,
)
from trimops.errands.services.run_errand import run_errand
from trimops.jobs import Job
from visits.domain.messages.message_kinds import MessageKind
from visits.services.messages.tell_next import tell_next
from visits.services.start_visit import start_visit

EIGHT = TUESDAY_TEN - timedelta(hours=2)
MIN = timedelta(minutes=1)


@pytest.fixture
def day(house):
    """The first farm under way since eight, the second promised for half past ten."""
    switch_on(house, MessageKind.ON_THE_WAY)
    second = make_farm(house.business, "High Croft", by=house.owner, latitude="54.15", longitude="-2.35")
    first = under_way(house.farm, house.van, EIGHT, head_count=10)
    put_down(first, house.cow, trimmed_foot(), at=TUESDAY_TEN - 10 * MIN)
    then = planned(second, house.van, TUESDAY_TEN + 30 * MIN, head_count=10)
    return first, then


def test_finishing_a_visit_tells_the_next_farm(house, day):
    first, then = day
    mailed(house, "Odo Other", farm=then.farm)
    mailed(house)
    finish(first, house.trimmer, TUESDAY_TEN)
    (errand,) = errands(house, Job.TELL_NEXT)
    run_errand(errand_id=errand.pk, clock=lambda: TUESDAY_TEN)
    (message,) = tell_next(visit=again(first), at=TUESDAY_TEN)
    assert subjects(house) == ["On the way to High Croft"]
    assert written(house)[0].address == "odo@farm.example"
    assert (message.kind, message.visit) == ("on_the_way", then)
    assert message.latest > TUESDAY_TEN
    assert written(house)[0].worthless_after >= message.latest


def test_twice_tells_once(house, day):
    first, then = day
    texted(house, farm=then.farm)
    finish(first, house.trimmer, TUESDAY_TEN)
    assert len(tell_next(visit=again(first), at=TUESDAY_TEN)) == 1
    assert tell_next(visit=again(first), at=TUESDAY_TEN + MIN) == []


def test_a_finish_heard_of_an_hour_later_tells_nobody(house, day):
    first, then = day
    mailed(house, farm=then.farm)
    finish(first, house.trimmer, TUESDAY_TEN)
    assert tell_next(visit=again(first), at=TUESDAY_TEN + 31 * MIN) == []


def test_nobody_is_told_once_the_next_visit_has_begun(house, day):
    first, then = day
    mailed(house, farm=then.farm)
    finish(first, house.trimmer, TUESDAY_TEN)
    start_visit(visit=then, checked=True, at=TUESDAY_TEN + 15 * MIN, by=house.trimmer)
    assert tell_next(visit=again(first), at=TUESDAY_TEN + 20 * MIN) == []


def test_a_van_that_waits_for_the_afternoon_is_not_on_its_way(house):
    switch_on(house, MessageKind.ON_THE_WAY)
    second = make_farm(house.business, "High Croft", by=house.owner)
    mailed(house, farm=second)
    first = under_way(house.farm, house.van, EIGHT)
    confirmed(second, house.van, TUESDAY_TEN + timedelta(hours=4))
    finish(first, house.trimmer, TUESDAY_TEN)
    assert tell_next(visit=again(first), at=TUESDAY_TEN) == []


def test_after_the_last_visit_there_is_nobody_to_tell(house):
    switch_on(house, MessageKind.ON_THE_WAY)
    mailed(house)
    first = under_way(house.farm, house.van, EIGHT)
    finish(first, house.trimmer, TUESDAY_TEN)
    assert tell_next(visit=again(first), at=TUESDAY_TEN) == []
