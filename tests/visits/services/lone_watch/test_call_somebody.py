"""One person is asked or told, by each way that is theirs."""

from tests.factories import NOON
from tests.visits.services.lone_watch.watched import sent, watch_of
from trimops.kernel.secret_link import hash_of
from trimops.outbox.domain.outgoing_states import Channel, Topic
from visits.models import WatchCall
from visits.services.lone_watch.call_somebody import CallText, Person, call_address, call_somebody

TEXT = CallText("Please look", f"Long words {call_address()}", f"Short {call_address()}")
BOTH = {Channel.SMS: "0199 555 030", Channel.MAIL: "aunt@home.example"}


def test_each_way_gets_its_own_text_and_the_same_link(house):
    watch = watch_of(house)
    call = call_somebody(watch=watch, person=Person("The aunt", BOTH), text=TEXT, at=NOON)

    sms, mail = sent(house)
    assert (sms.channel, sms.address, sms.subject) == ("sms", "0199 555 030", "")
    assert (mail.channel, mail.address, mail.subject) == ("mail", "aunt@home.example", "Please look")
    assert sms.body.startswith("Short")
    assert mail.body.startswith("Long words")
    assert {sms.topic, mail.topic} == {Topic.WATCH.value}
    assert sms.farm_id == mail.farm_id == house.farm.pk, "an erased farm takes them along"
    assert sms.secret == mail.secret
    assert hash_of(mail.secret) == call.secret_hash
    assert "{secret}" in mail.body, "the link is put together when it goes"


def test_it_goes_by_night_as_by_day(house):
    call_somebody(watch=watch_of(house), person=Person("The aunt", BOTH), text=TEXT, at=NOON)
    assert [outgoing.not_before for outgoing in sent(house)] == [None, None]


def test_calls_are_numbered_and_one_number_is_written_once(house):
    watch = watch_of(house)
    for _ in range(2):
        call_somebody(watch=watch, person=Person("The aunt", BOTH), text=TEXT, at=NOON)
    numbers = WatchCall.objects.within(house.scope).values_list("number", flat=True)
    assert list(numbers) == [1, 2]
    assert len({outgoing.once for outgoing in sent(house)}) == 4


def test_who_has_no_contact_is_the_trimmer(house):
    assert call_somebody(watch=watch_of(house), person=Person("Ada", BOTH), text=TEXT, at=NOON).is_trimmer
