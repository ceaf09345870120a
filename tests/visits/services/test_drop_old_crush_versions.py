"""Earlier versions go, what shows stays, and nothing that comes late can change it any more."""

from datetime import timedelta
from uuid import UUID

import pytest

from tests.factories import TUESDAY_TEN, finish, make_cow, make_van, under_way
from tests.visits.api.phone import cow_content
from tests.visits.services.sendings import HOUR, made, outcomes, phone_at, reasons, send
from tests.visits.services.test_keep_writings import row, shown
from visits.domain.crush_entry import CowEntry
from visits.models import CrushWriting, Trim
from visits.selectors.crush_writings import writings_of
from visits.services import drop_old_crush_versions as dropping
from visits.services.drop_old_crush_versions import drop_old_crush_versions
from visits.services.keep_writings import keep_writings
from visits.services.record_trim import CrushRecord, VisitNotUnderWay, record_trim
from visits.services.sift_writings import TOO_OLD

AT = TUESDAY_TEN + HOUR
LATER = AT + timedelta(days=3 * 366)


def drop(house, before=AT + 4 * HOUR):
    return drop_old_crush_versions(scope=house.scope, before=before, at=LATER)


@pytest.fixture
def over(house, visit):
    """Two cows, three versions of the one and one of the other; finished."""
    other = make_cow(house.farm, "102")
    rows = [
        row(visit, house, 1, "one"),
        row(visit, house, 2, "two", after=1),
        row(visit, house, 3, "three", phone=2),
    ]
    keep_writings(visit=visit, rows=[*rows, row(visit, house, 4, "other", cow=other)])
    return finish(visit, house.trimmer, AT + 3 * HOUR)


def test_what_shows_stays_as_it_was_and_the_rest_goes(house, over):
    before = shown(house)
    assert drop(house) == 2
    assert shown(house) == before
    left = writings_of(house.scope, over).rows
    assert [(line["uid"][-1], line["shows"]) for line in left] == [("3", True), ("4", True)]
    assert drop(house) == 0


def test_younger_visits_and_those_under_way_keep_every_version(house, over):
    assert drop(house, before=over.finished_at) == 0
    open_visit = under_way(house.farm, make_van(house.business, house.owner, "Van 2"))
    keep_writings(visit=open_visit, rows=[row(open_visit, house, 11, "a"), row(open_visit, house, 12, "b")])
    assert drop(house) == 2
    assert CrushWriting.objects.within(house.scope).filter(visit=open_visit).count() == 2


def test_many_visits_go_in_several_steps(house, over, monkeypatch):
    monkeypatch.setattr(dropping, "AT_ONCE", 1)
    second = under_way(house.farm, make_van(house.business, house.owner, "Van 2"))
    keep_writings(visit=second, rows=[row(second, house, 11, "a"), row(second, house, 12, "b")])
    finish(second, house.trimmer, AT + 3 * HOUR)
    assert drop(house) == 3


def test_a_phone_that_comes_years_later_is_told_why_nothing_is_taken(house, visit):
    phone = phone_at(visit)
    phone.write(cow_content(house.cow.pk, note="first"), **made(AT))
    sent = list(phone.waiting)
    assert outcomes(send(phone, house, AT)) == ["kept"]
    phone.write(cow_content(house.cow.pk, note="second"), **made(AT + HOUR))
    send(phone, house, AT + HOUR)
    finish(visit, house.trimmer, AT + 2 * HOUR)
    drop(house)
    visit.refresh_from_db()
    phone.waiting = sent
    late = send(phone, house, LATER)
    assert (outcomes(late), reasons(late)) == (["refused"], [[("", TOO_OLD)]])
    with pytest.raises(VisitNotUnderWay, match="too long ago"):
        record_trim(
            visit=visit,
            record=CrushRecord(house.cow, CowEntry(), UUID(sent[0]["uid"]), LATER),
            by=house.trimmer,
        )
    assert Trim.objects.within(house.scope).get().note == "second"
