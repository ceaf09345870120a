from tests.factories import NOON
from tests.trimops.outbox.messages import now, put
from trimops.outbox.selectors.make_ready import make_ready
from trimops.outbox.senders.ready import Part


def test_it_is_handed_over_whole(house):
    house.business.country = "FR"
    house.business.save()
    part = Part("a.ics", "text/calendar; method=REQUEST", b"BEGIN", is_alternative=True)
    row = put(house, body="Open {secret}.", secret="https://s", parts=[part], reply_to="us@example.invalid")
    ready = make_ready(now(row), NOON)
    assert (ready.key, ready.channel, ready.address) == (row.key, "mail", "office@example.invalid")
    assert (ready.body, ready.reply_to, ready.at) == ("Open https://s.", "us@example.invalid", NOON)
    assert (ready.from_name, ready.country, ready.is_automatic) == ("Ash & Rye Foot Trimming", "FR", True)
    (hung,) = ready.parts
    assert (hung.name, hung.media_type, hung.content, hung.is_alternative) == (
        *("a.ics", "text/calendar; method=REQUEST", b"BEGIN", True),
    )


def test_what_a_person_pressed_a_button_for_is_not_automatic(house):
    assert not make_ready(now(put(house, by=house.office)), NOON).is_automatic
