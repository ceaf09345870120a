"""Writings are kept, and what they are about says what shows."""

from itertools import permutations
from uuid import UUID

import pytest
from django.db import transaction

from tests.factories import TUESDAY_TEN, make_cow
from tests.visits.api.phone import cow_content
from tests.visits.services.sendings import HOUR
from visits.models import CrushWriting, Trim
from visits.services.keep_writings import keep_writings

AT = TUESDAY_TEN + HOUR


def row(visit, house, number, note, after=None, cow=None, phone=1):
    """`number` gives the uid and the minute at which it was made."""
    cow = cow or house.cow
    return CrushWriting(
        business=house.business,
        uid=UUID(int=number),
        visit=visit,
        kind="cow",
        record=UUID(int=1000 + cow.pk),
        after=UUID(int=after) if after else None,
        cow=cow,
        content=cow_content(cow.pk, note=note),
        phone=UUID(int=phone),
        made_at=AT,
        placed_at=AT + HOUR * number,
        received_at=AT + HOUR * 9,
        by=house.trimmer,
    )


def shown(house):
    return list(
        Trim.objects.within(house.scope).order_by("cow").values_list("note", "version", "recorded_at")
    )


def test_the_latest_shows_and_all_are_kept(house, visit):
    keep_writings(visit=visit, rows=[row(visit, house, n, f"word {n}") for n in (3, 1, 2)])
    assert shown(house) == [("word 3", 3, AT + 3 * HOUR)]
    assert CrushWriting.objects.within(house.scope).count() == 3


@pytest.mark.parametrize("order", list(permutations((1, 2, 3))))
def test_the_order_in_which_they_came_makes_no_difference(house, visit, order):
    made = {
        1: row(visit, house, 1, "first", after=2),
        2: row(visit, house, 2, "second"),
        3: row(visit, house, 3, "third", phone=2),
    }
    for number in order:
        keep_writings(visit=visit, rows=[made[number]])
    assert shown(house) == [("third", 3, AT + 3 * HOUR)]


def test_a_word_that_comes_late_leaves_what_shows(house, visit):
    keep_writings(visit=visit, rows=[row(visit, house, 2, "late made")])
    keep_writings(visit=visit, rows=[row(visit, house, 1, "early made")])
    assert shown(house) == [("late made", 2, AT + 2 * HOUR)]


def test_other_cows_are_not_touched(house, visit):
    other = make_cow(house.farm, "102")
    keep_writings(visit=visit, rows=[row(visit, house, 1, "one"), row(visit, house, 2, "two", cow=other)])
    keep_writings(visit=visit, rows=[row(visit, house, 3, "three", cow=other)])
    assert [(note, version) for note, version, _ in shown(house)] == [("one", 1), ("three", 2)]


def test_it_is_all_or_nothing(house, visit):
    rows = [row(visit, house, 1, "one"), row(visit, house, 1, "the same uid")]
    with pytest.raises(Exception, match=r"UNIQUE|unique"), transaction.atomic():
        keep_writings(visit=visit, rows=rows)
    assert shown(house) == []
