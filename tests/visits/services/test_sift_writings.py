"""What of a batch may be kept."""

from datetime import timedelta

import pytest

from tests.factories import TUESDAY_TEN, make_cow, make_farm, make_house, make_kit, under_way
from tests.visits.api.phone import cow_content
from tests.visits.services.sendings import HOUR, phone_at
from visits.domain.read_batch import read_batch
from visits.models import CrushWriting
from visits.services.sift_writings import Arrival, Outcome, sift_writings

AT = TUESDAY_TEN + HOUR


@pytest.fixture
def phone(visit):
    return phone_at(visit)


def sift(phone, house, **changes):
    batch, faults = read_batch(phone.body(sent_at=AT.isoformat(), **changes))
    assert faults == []
    return sift_writings(arrival=Arrival(phone.visit, batch, AT, house.trimmer))


def fault_of(phone, house):
    (found,) = sift(phone, house)
    assert (found.outcome, found.row) == (Outcome.REFUSED, None)
    ((fault),) = found.faults
    return fault.field, fault.reason


def test_a_row_stands_ready_with_its_place_on_our_clock(house, phone):
    sent = phone.write(cow_content(house.cow.pk), made_at=(AT - HOUR / 2).isoformat())
    (found,) = sift(phone, house)
    row = found.row
    assert (str(row.uid), row.cow_id, row.phone, row.by) == (
        sent["uid"],
        house.cow.pk,
        row.phone,
        house.trimmer,
    )
    assert (row.placed_at, row.received_at, row.pk) == (AT - HOUR / 2, AT, None)
    assert row.content["entry"]["feet"] == []


def test_a_cow_of_another_farm_is_refused_by_its_field(house, phone):
    elsewhere = make_cow(make_farm(house.business, "High Croft", by=house.owner), "7")
    phone.write(cow_content(elsewhere.pk))
    assert fault_of(phone, house) == ("content.cow.id", "is no cow of this farm")


def test_a_cow_of_another_business_is_as_good_as_none(house, phone):
    phone.write(cow_content(make_house("Fell & Beck").cow.pk))
    assert fault_of(phone, house) == ("content.cow.id", "is no cow of this farm")


def test_kit_of_another_business_is_refused_by_its_field(house, phone):
    theirs = make_kit(make_house("Fell & Beck").business)
    phone.write({"consumable": theirs["wood"].pk, "extra": "1"}, kind="kit")
    assert fault_of(phone, house) == ("content.consumable", "is not among your kit")


def test_a_record_cannot_be_two_cows(house, phone):
    record = phone.new_uid()
    for cow in (house.cow, make_cow(house.farm, "7")):
        phone.write(cow_content(cow.pk), record=record)
    first, second = sift(phone, house)
    assert (first.outcome, second.outcome) == (Outcome.KEPT, Outcome.REFUSED)
    assert [fault.field for fault in second.faults] == ["record"]


def test_a_writing_of_another_visit_is_not_taken_for_known(house, phone):
    sent = phone.write(cow_content(house.cow.pk))
    (found,) = sift(phone, house)
    CrushWriting.objects.bulk_create([found.row])
    phone.visit = under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=1))
    (again,) = sift(phone, house, writings=[sent])
    assert [(fault.field, fault.reason) for fault in again.faults] == [("uid", "was sent for another visit")]


def test_a_hundred_are_judged_with_as_many_questions_as_one(house, phone, django_assert_max_num_queries):
    for _ in range(100):
        phone.write(cow_content(house.cow.pk))
    with django_assert_max_num_queries(4):
        assert len(sift(phone, house)) == 100
