"""Each person of a farm is told by the way that suits them, and nobody who wants no more."""

from datetime import timedelta

import pytest
from django.db import transaction

from farms.services.opt_out import opt_in, opt_out
from tests.factories import NOON, TUESDAY_TEN, make_farm, make_house, planned
from tests.visits.services.messages.told_farms import mailed, switch_on, texted, written
from trimops.outbox.domain.outgoing_states import Topic
from visits.domain.messages.message_kinds import MessageKind
from visits.models import MessageText, VisitMessage
from visits.selectors.messages.message_facts import News
from visits.services.messages.tell_farms import tell_farms

HOUR = timedelta(hours=1)


@pytest.fixture
def visit(house):
    switch_on(house)
    return planned(house.farm, house.van)


def booked(once="1", hour=TUESDAY_TEN, kind=MessageKind.BOOKED, **more):
    return News(kind, hour, once, **more)


def tell(visit, news=None, at=NOON):
    return tell_farms(visit=visit, news=news or booked(), at=at)


def test_each_by_the_own_way(house, visit):
    mailed(house)
    texted(house)
    tell(visit)
    rows = {row.channel: row for row in written(house)}
    assert rows["mail"].address == "ann@farm.example"
    assert rows["sms"].address == "0199 555 020"
    assert rows["sms"].subject == ""
    assert "\n" not in rows["sms"].body
    assert {row.topic for row in rows.values()} == {Topic.VISIT}
    assert {row.farm_id for row in rows.values()} == {house.farm.pk}


def test_whoever_stopped_them_gets_none_until_they_want_them_again(house, visit):
    ann = mailed(house)
    opt_out(contact=ann, at=NOON)
    assert tell(visit) == []
    opt_in(contact=ann)
    assert len(tell(visit)) == 1


def test_every_message_says_how_to_stop_it(house, visit, client):
    mailed(house)
    texted(house)
    tell(visit)
    for row in written(house):
        link = next(word for word in row.body.split() if "/stop/" in word)
        assert client.get(link.removeprefix("http://localhost:8000")).status_code == 200


def test_the_same_news_is_written_once_and_other_news_again(house, visit):
    mailed(house)
    assert [len(tell(visit)), len(tell(visit)), len(tell(visit, booked("2")))] == [1, 0, 1]


def test_a_person_who_comes_later_is_told_and_the_first_not_again(house, visit):
    mailed(house)
    tell(visit)
    texted(house)
    (message,) = tell(visit)
    assert message.contact.name == "Sid Text"


def test_a_change_that_is_rolled_back_tells_nobody(house, visit):
    mailed(house)
    with pytest.raises(ZeroDivisionError), transaction.atomic():
        tell(visit)
        1 / 0  # noqa: B018
    assert written(house) == []
    assert not VisitMessage.objects.within(house.scope).exists()


def test_people_of_other_farms_and_businesses_are_not_told(house, visit):
    other = make_house("Elm Hoof Care")
    switch_on(other)
    mailed(other)
    mailed(house, "Odo", farm=make_farm(house.business, "High Croft", by=house.owner))
    assert tell(visit) == []
    assert written(other) == []


def test_a_text_in_the_reader_s_language_else_in_english_else_the_house_s(house, visit):
    own = {"business": house.business, "kind": "booked"}
    MessageText.objects.create(**own, language="de", subject="Klauen {day}")
    MessageText.objects.create(**own, language="en", subject="Feet {day}", body="Own words for {farm}.")
    mailed(house, "Hans", language="de")
    mailed(house, "Ann")
    mailed(house, "Gwen", language="cy")
    tell(visit)
    subjects = {row.address.partition("@")[0]: row.subject for row in written(house)}
    assert subjects == {
        "hans": "Klauen Dienstag 3. März",
        "ann": "Feet Tuesday 3 March",
        "gwen": "Feet Tuesday 3 March",
    }
    assert all(row.body.startswith("Own words for Low Croft.") for row in written(house))


def test_it_waits_out_the_quiet_and_is_worth_nothing_after_its_hour(house, visit):
    mailed(house)
    tell(visit, at=NOON + 9 * HOUR)
    (row,) = written(house)
    assert row.not_before == NOON + 19 * HOUR
    assert row.worthless_after == TUESDAY_TEN


def test_an_hour_gone_may_be_told_an_hour_beyond_it(house, visit):
    mailed(house)
    tell(visit, booked(kind=MessageKind.CALLED_OFF))
    assert written(house)[0].worthless_after == TUESDAY_TEN + HOUR


def test_answers_go_to_the_business(house, visit):
    house.business.email = "desk@ash-and-rye.example"
    house.business.save()
    mailed(house)
    tell(visit)
    assert written(house)[0].reply_to == "desk@ash-and-rye.example"


def test_a_farm_with_braces_in_its_name_fills_no_place(house, visit):
    house.farm.name = "{phone} {secret} Croft"
    house.farm.save()
    mailed(house)
    tell(visit)
    assert "{phone} {secret} Croft" in written(house)[0].subject
