"""What happened is kept as a fact."""

from datetime import timedelta

import pytest

from tests.factories import NOON, make_wish, planned
from tests.visits.services.changed_week import at
from visits.domain.visit_states import VisitReason
from visits.domain.what_happened import WhatHappened
from visits.models import OutBecause, VanOut, Visit
from visits.selectors.week_under_way import LateWord
from visits.services.finish_visit import SignOff, finish_visit
from visits.services.note_what_happened import (
    HappeningMakesNoSense,
    LameWord,
    OffWord,
    OutWord,
    may_run_late,
    note_what_happened,
)


def note(house, happening, now=NOON):
    return note_what_happened(happening=happening, at=now, by=house.owner)


@pytest.mark.parametrize(
    ("because", "what"), [(OutBecause.CRUSH, WhatHappened.OUT), (OutBecause.ILL, WhatHappened.ILL)]
)
def test_a_van_out_of_action_is_kept_with_its_hours(house, because, what):
    kind, words = note(house, OutWord(house.van, because, at(3, 8), at(4, 17)))
    row = VanOut.objects.within(house.scope).get()
    assert (kind, row.van, row.since, row.until, row.because) == (
        what,
        house.van,
        at(3, 8),
        at(4, 17),
        because,
    )
    assert words.startswith(f"Van 1: {because.label.lower()}, Tue 3 Mar 08:00")


def test_it_cannot_be_back_before_it_is_out(house):
    with pytest.raises(HappeningMakesNoSense, match="later end"):
        note(house, OutWord(house.van, OutBecause.VAN, at(4, 8), at(4, 8)))


def test_a_visit_called_off_is_called_off_with_its_reason(house):
    visit = planned(house.farm, house.van)
    kind, words = note(house, OffWord(visit, "Snowed in"))
    assert (kind, words) == (WhatHappened.CALLED_OFF, "Low Croft calls its visit off: Snowed in")
    assert Visit.objects.within(house.scope).get().called_off_because == "Snowed in"


def test_a_lame_cow_is_an_urgent_wish(house):
    kind, _ = note(house, LameWord(house.farm, make_wish(reason=VisitReason.URGENT, head_count=1)))
    assert (kind, Visit.objects.within(house.scope).get().reason) == (WhatHappened.LAME, "urgent")
    with pytest.raises(HappeningMakesNoSense, match="urgent"):
        note(house, LameWord(house.farm, make_wish()))


def test_a_van_cannot_be_late_at_a_visit_that_is_done(house, visit):
    assert may_run_late(visit)
    assert "at 12:40 only" in note(house, LateWord(visit, at(3, 12, 40)))[1]
    done = finish_visit(visit=visit, sign_off=SignOff("A", True), at=at(3, 12), by=house.trimmer)
    assert not may_run_late(done)
    with pytest.raises(HappeningMakesNoSense, match="done"):
        note(house, LateWord(done, at(3, 13)))


def test_nor_be_free_in_the_past(house, visit):
    with pytest.raises(HappeningMakesNoSense, match="over already"):
        note(house, LateWord(visit, NOON - timedelta(minutes=1)))
