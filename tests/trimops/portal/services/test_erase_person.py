import pytest
from allauth.account.models import EmailAddress

from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_house,
    make_member,
    put_down,
    under_way,
)
from trimops.accounts.roles import Role
from trimops.accounts.services.end_membership import LastOwner
from trimops.api.models import RepeatableCall
from trimops.outbox.domain.outgoing_states import Channel, Topic
from trimops.outbox.models import Outgoing
from trimops.outbox.services.put_out import Message, put_out
from trimops.portal.services.erase_person import PersonIsAtWork, PersonNameDoesNotMatch, erase_person
from visits.models import Trim


def erase(house, role, typed=None):
    membership = house.memberships[role]
    return erase_person(membership=membership, typed_name=typed or membership.user.name, at=NOON)


def test_name_address_and_what_was_sent_go_and_the_cows_history_stays(house):
    person, membership = house.trimmer, house.memberships[Role.TRIMMER]
    membership.phone = "+44 1632 960001"
    membership.save()
    EmailAddress.objects.create(user=person, email=person.email)
    message = Message(channel=Channel.MAIL, topic=Topic.EVENING, address=person.email, subject="s", body="b")
    put_out(business_id=house.business.pk, message=message, at=NOON)
    RepeatableCall.objects.create(
        business=house.business, user=house.office, key="k", fingerprint="f", called_at=NOON, body=person.name
    )
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot())
    finish(visit, person)
    told = (person.name, person.email)
    assert erase(house, Role.TRIMMER, f" {told[0].upper()} ")
    person.refresh_from_db()
    membership.refresh_from_db()
    assert not {*told} & {person.name, person.email}
    assert (membership.phone, membership.ended_at, person.is_active) == ("", NOON, False)
    assert not person.has_usable_password()
    assert not EmailAddress.objects.filter(user=person).exists()
    assert not Outgoing.objects.within(house.scope).filter(address=told[1]).exists()
    assert RepeatableCall.objects.within(house.scope).get().body is None
    assert Trim.objects.within(house.scope).get().recorded_by == person


def test_who_is_in_another_business_too_keeps_the_account(house):
    make_member(make_house("Elm & Oak").business, Role.TRIMMER, house.office)
    assert not erase(house, Role.OFFICE)
    house.office.refresh_from_db()
    assert house.office.is_active
    assert house.office.email.startswith("person-")


def test_another_name_erases_nobody(house):
    with pytest.raises(PersonNameDoesNotMatch):
        erase(house, Role.OFFICE, "Somebody else")
    house.office.refresh_from_db()
    assert house.office.is_active


def test_nobody_is_erased_in_the_middle_of_their_work(house):
    under_way(house.farm, house.van, TUESDAY_TEN)
    with pytest.raises(PersonIsAtWork):
        erase(house, Role.TRIMMER)


def test_the_last_owner_stays(house):
    with pytest.raises(LastOwner):
        erase(house, Role.OWNER)
    house.owner.refresh_from_db()
    assert house.owner.is_active
