"""People of a farm are invited, told of moves and of what is off: each news once, with the feed's uid and sequence."""

from datetime import timedelta

import icalendar
import pytest

from farms.models import Contact
from farms.services.save_farm import save_farm
from tests.factories import NOON, TUESDAY_TEN, confirmed, make_house, planned
from tests.visits.documents.feed_lint import faults_of
from tests.visits.documents.itip_lint import itip_faults
from tests.visits.selectors.calendar_read import only, subscribe
from trimops.accounts.models import Business
from trimops.errands.kinds import TryLater
from trimops.errands.models import Errand
from trimops.jobs import Job
from trimops.outbox.models import Outgoing, OutgoingPart
from visits.models import Invitation
from visits.services.call_off_visit import call_off_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.plan_visit import plan_visit
from visits.services.put_off_visit import put_off_visit
from visits.services.send_invitations import send_invitations

LATER = NOON + timedelta(hours=1)
HOUR = timedelta(hours=1)


@pytest.fixture
def house(db):
    house = make_house()
    Business.objects.filter(pk=house.business.pk).update(email="office@ash-rye.example", phone="0199 555 010")
    house.business.refresh_from_db()
    invite(house, "herd@low-croft.example", name="H. Manager")
    return house


def invite(house, address, **fields):
    return Contact.objects.create(
        business=house.business, farm=house.farm, part="Herd", email=address,
        **{"name": "Somebody", "gets_invitations": True, **fields},
    )  # fmt: skip


def mails(house):
    return list(Outgoing.objects.within(house.scope).filter(topic="calendar").order_by("pk"))


def event_of(house, mail):
    (part,) = OutgoingPart.objects.within(house.scope).filter(outgoing=mail)
    raw = bytes(part.content)
    assert itip_faults(raw) == faults_of(raw) == []
    calendar = icalendar.Calendar.from_ical(raw)
    assert part.is_alternative
    assert part.media_type == f"text/calendar; method={calendar['METHOD']}; charset=utf-8"
    return calendar["METHOD"], calendar.events[0]


def test_a_confirmed_visit_invites_once_with_the_feeds_uid_and_sequence(house):
    visit = confirmed(house.farm, house.van)
    assert send_invitations(visit=visit, at=LATER) == 1
    assert send_invitations(visit=visit, at=LATER + HOUR) == 0
    (mail,) = mails(house)
    method, event = event_of(house, mail)
    shown = only(subscribe(house))
    assert method == "REQUEST"
    for name in ("UID", "SEQUENCE", "DTSTART", "DTEND", "DTSTAMP", "LOCATION", "STATUS"):
        assert event[name] == shown[name], name
    assert str(event["ORGANIZER"]) == "mailto:office@ash-rye.example"
    assert (mail.address, mail.reply_to) == ("herd@low-croft.example", "office@ash-rye.example")
    assert mail.subject == "Foot trimming at Low Croft, Tue 3 Mar 10:00"
    assert "0199" in mail.body


def test_what_is_only_planned_invites_nobody(house):
    assert send_invitations(visit=planned(house.farm, house.van), at=LATER) == 0
    assert Errand.objects.within(house.scope).filter(job=Job.SEND_INVITATIONS).count() == 0


def test_a_move_goes_to_the_same_people_with_a_higher_sequence_though_they_left_the_list(house):
    visit = confirmed(house.farm, house.van)
    send_invitations(visit=visit, at=LATER)
    Contact.objects.within(house.scope).delete()
    put_off_visit(visit=visit, because="Rain", at=LATER, by=house.owner)
    plan_visit(visit=visit, van=house.van, start=TUESDAY_TEN + HOUR, at=LATER, by=house.owner)
    confirm_visit(visit=visit, at=LATER, by=house.owner)
    assert send_invitations(visit=visit, at=LATER + HOUR) == 1
    first, second = (event_of(house, mail)[1] for mail in mails(house))
    assert second["UID"] == first["UID"]
    assert second["SEQUENCE"] == first["SEQUENCE"] + 3
    assert second["DTSTART"].dt == TUESDAY_TEN + HOUR
    assert mails(house)[1].subject == "New hour: foot trimming at Low Croft, Tue 3 Mar 11:00"


def test_what_is_called_off_is_taken_back_at_the_hour_that_was_told(house):
    visit = confirmed(house.farm, house.van)
    send_invitations(visit=visit, at=LATER)
    call_off_visit(visit=visit, because="Snow", at=LATER, by=house.owner)
    assert send_invitations(visit=visit, at=LATER + HOUR) == 1
    assert send_invitations(visit=visit, at=LATER + HOUR) == 0
    method, event = event_of(house, mails(house)[1])
    assert (method, event["STATUS"], event["DTSTART"].dt) == ("CANCEL", "CANCELLED", TUESDAY_TEN)
    assert event["SEQUENCE"] == only(subscribe(house))["SEQUENCE"]
    assert Invitation.objects.within(house.scope).get().cancelled_at == LATER + HOUR


def test_put_off_and_confirmed_at_another_hour_later_invites_again(house):
    visit = confirmed(house.farm, house.van)
    send_invitations(visit=visit, at=LATER)
    put_off_visit(visit=visit, because="Rain", at=LATER, by=house.owner)
    send_invitations(visit=visit, at=LATER + HOUR)
    plan_visit(visit=visit, van=house.van, start=TUESDAY_TEN + 2 * HOUR, at=LATER + HOUR, by=house.owner)
    assert send_invitations(visit=visit, at=LATER + 2 * HOUR) == 0
    confirm_visit(visit=visit, at=LATER + 2 * HOUR, by=house.owner)
    assert send_invitations(visit=visit, at=LATER + 3 * HOUR) == 1
    methods = [event_of(house, mail)[0] for mail in mails(house)]
    sequences = [event_of(house, mail)[1]["SEQUENCE"] for mail in mails(house)]
    assert methods == ["REQUEST", "CANCEL", "REQUEST"]
    assert sequences == sorted(set(sequences))


def test_each_gets_a_paper_of_his_own_and_nobody_two(house):
    invite(house, "HERD@low-croft.example")
    invite(house, "owner@low-croft.example")
    invite(house, "vet@elsewhere.example", gets_invitations=False)
    invite(house, "quiet@low-croft.example", opted_out_at=NOON)
    assert send_invitations(visit=confirmed(house.farm, house.van), at=LATER) == 2
    guests = [str(event_of(house, mail)[1]["ATTENDEE"]) for mail in mails(house)]
    assert sorted(guest.lower() for guest in guests) == [
        "mailto:herd@low-croft.example", "mailto:owner@low-croft.example",
    ]  # fmt: skip


def test_a_change_is_looked_at_when_it_has_settled_and_not_before(house):
    visit = confirmed(house.farm, house.van)
    errand = Errand.objects.within(house.scope).filter(job=Job.SEND_INVITATIONS).latest("pk")
    assert errand.ids == {"visit_id": visit.pk}
    with pytest.raises(TryLater) as refused:
        send_invitations(visit=visit, at=NOON + timedelta(seconds=5))
    assert refused.value.at == errand.due_at == NOON + timedelta(minutes=2)


def test_an_hour_that_has_passed_is_news_to_nobody(house):
    visit = confirmed(house.farm, house.van)
    assert send_invitations(visit=visit, at=TUESDAY_TEN + HOUR) == 0


def test_a_business_without_an_address_can_organize_nothing(house):
    Business.objects.filter(pk=house.business.pk).update(email="")
    assert send_invitations(visit=confirmed(house.farm, house.van), at=LATER) == 0


def test_a_farm_that_moves_raises_the_sequence_of_the_next_invitation(house):
    visit = confirmed(house.farm, house.van)
    send_invitations(visit=visit, at=LATER)
    house.farm.address = "Up the track"
    save_farm(farm=house.farm, at=LATER, by=house.owner)
    call_off_visit(visit=visit, because="Snow", at=LATER, by=house.owner)
    send_invitations(visit=visit, at=LATER + HOUR)
    first, second = (event_of(house, mail)[1]["SEQUENCE"] for mail in mails(house))
    assert second == first + 2
