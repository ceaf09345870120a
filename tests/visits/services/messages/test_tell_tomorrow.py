"""The evening before: when the van comes, and which cows to bring."""

import io
from datetime import time, timedelta

import pytest
from django.core.exceptions import ValidationError
from pypdf import PdfReader

from farms.models import Contact
from tests.factories import NOON, TUESDAY_TEN, confirmed, make_cow, make_farm, named, planned, wanted
from tests.visits.services.messages.told_farms import again, mailed, switch_on, texted, written
from trimops.errands.kinds import TryLater
from trimops.outbox.domain.sms_size import sms_size
from visits.domain.messages.message_kinds import MessageKind
from visits.models import VisitMessage
from visits.services.call_off_visit import call_off_visit
from visits.services.messages.tell_tomorrow import tell_tomorrow
from visits.services.strike_cow import strike_cow

FOUR = NOON + timedelta(hours=4)


def tell(house, at=FOUR):
    return tell_tomorrow(business=house.business, at=at)


@pytest.fixture
def asked(house):
    """A confirmed visit of tomorrow, for which the farm names a cow that is lame."""
    switch_on(house, MessageKind.TOMORROW)
    lame = make_cow(house.farm, "777")
    return confirmed(house.farm, house.van, cows=[named(lame, "Left hind, cannot stand")], head_count=5)


def test_a_mail_names_the_span_and_the_cows_and_brings_the_list(house, asked):
    mailed(house)
    (message,) = tell(house)
    mail = written(house)[0]
    assert mail.subject.startswith("Tomorrow between ")
    assert mail.subject.endswith(": foot trimming at Low Croft")
    assert "777: Left hind, cannot stand" in mail.body
    assert "Tuesday 3 March" in mail.body
    part = mail.parts.within(house.scope).get()
    assert (part.name, part.media_type) == ("draft-list-2026-03-03.pdf", "application/pdf")
    assert "777" in PdfReader(io.BytesIO(bytes(part.content))).pages[0].extract_text()
    assert message.hour == TUESDAY_TEN
    assert message.latest > TUESDAY_TEN
    assert again(asked).hour_told == TUESDAY_TEN


def test_an_sms_counts_the_cows_and_leads_to_the_list(house, asked, client):
    texted(house)
    tell(house)
    body = written(house)[0].body
    assert "Cows to bring: 1." in body
    assert sms_size(body).parts <= 2
    link = next(word for word in body.split() if "/list/" in word)
    answer = client.get(link.removeprefix("http://localhost:8000"))
    assert answer.status_code == 200
    assert answer["Content-Type"] == "application/pdf"
    assert answer["Referrer-Policy"] == "no-referrer"
    call_off_visit(visit=asked, because="Ill", at=FOUR, by=house.office)
    assert client.get(link.removeprefix("http://localhost:8000")).status_code == 404


def test_a_cow_that_was_struck_is_not_asked_for(house, asked):
    mailed(house)
    cow = house.farm.cows.within(house.scope).get(number="777")
    strike_cow(visit=asked, cow=cow, why="", at=NOON, by=house.office)
    tell(house)
    assert "777" not in written(house)[0].body


def test_twice_tells_once_and_another_day_again(house, asked):
    mailed(house)
    texted(house)
    assert len(tell(house)) == 2
    assert tell(house) == []
    assert VisitMessage.objects.within(house.scope).count() == 2


def test_only_visits_of_tomorrow_that_have_an_hour_are_told(house):
    switch_on(house, MessageKind.TOMORROW)
    mailed(house)
    planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=1))
    planned(house.farm, house.van, NOON + timedelta(hours=2))
    wanted(house.farm)
    call_off_visit(visit=planned(house.farm, house.van), because="Ill", at=NOON, by=house.office)
    assert tell(house) == []


def test_before_the_hour_of_the_business_it_waits(house):
    switch_on(house, MessageKind.TOMORROW, tomorrow_at=time(17, 30))
    with pytest.raises(TryLater) as later:
        tell(house)
    assert later.value.at == NOON + timedelta(hours=5, minutes=30)


def test_tomorrow_is_the_business_s_own(house):
    house.business.timezone = "Pacific/Auckland"
    house.business.save()
    switch_on(house, MessageKind.TOMORROW)
    mailed(house)
    # Thirteen hours ahead: ten in the morning of UTC is Tuesday night there, and Monday noon is Tuesday already.
    planned(house.farm, house.van, TUESDAY_TEN)
    assert tell(house, NOON.replace(hour=4)) != []


def test_whoever_opted_out_or_has_no_way_is_not_told(house, asked):
    mailed(house, "Gone", opted_out_at=NOON)
    mailed(house, "Quiet", told_by="")
    assert tell(house) == []
    assert again(asked).hour_told is None


def test_nothing_goes_where_it_is_not_switched_on(house):
    mailed(house)
    planned(house.farm, house.van)
    assert tell(house) == []


def test_other_farms_are_told_of_their_own(house, asked):
    mailed(house)
    other = make_farm(house.business, "High Croft", by=house.owner)
    planned(other, house.van, TUESDAY_TEN + timedelta(hours=4))
    mailed(house, "Odo Other", farm=other)
    tell(house)
    assert {row.address: row.subject.rpartition(" at ")[2] for row in written(house)} == {
        "ann@farm.example": "Low Croft",
        "odo@farm.example": "High Croft",
    }


def test_a_farm_that_cannot_be_told_costs_no_other_its_message_and_is_tried_again(house, asked, caplog):
    """A number of nothing but a space came in past the forms."""
    texted(house)
    Contact.objects.within(house.scope).update(phone=" ")
    other = make_farm(house.business, "High Croft", by=house.owner)
    Contact.objects.create(
        business=house.business,
        farm=other,
        name="Ann",
        part="Owner",
        told_by="mail",
        email="ann@farm.example",
    )
    later = planned(other, house.van, TUESDAY_TEN + timedelta(hours=4))
    with pytest.raises(ValidationError):
        tell(house)
    assert [row.address for row in written(house)] == ["ann@farm.example"]
    assert again(later).hour_told == later.planned_start
    assert f"not told of tomorrow: visit {asked.pk}" in caplog.text
