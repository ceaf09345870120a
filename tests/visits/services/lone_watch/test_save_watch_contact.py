"""The list of those who are told."""

import pytest

from tests.factories import make_farm, make_van, under_way
from tests.visits.services.lone_watch.watched import addresses, look, rules
from trimops.kernel.errors import FieldRefused
from visits.models import LoneWatch, WatchContact
from visits.services.lone_watch.save_watch_contact import (
    LastOnTheList,
    drop_watch_contact,
    save_watch_contact,
)


def contacts(house):
    return WatchContact.objects.within(house.scope)


def test_somebody_is_put_on_the_list_in_their_turn(house):
    save_watch_contact(
        contact=WatchContact(business=house.business, name="B. First", email="b@home.example", turn=1)
    )
    assert [contact.name for contact in contacts(house)] == ["N. Neighbour", "B. First", "S. Sister"]


@pytest.mark.parametrize("told_by", ["mail", "sms", "both"])
def test_without_an_address_of_that_kind_nobody_can_be_told(house, told_by):
    other = {"mail": {"phone": "0199 555 030"}, "sms": {"email": "b@home.example"}, "both": {}}[told_by]
    with pytest.raises(FieldRefused) as refused:
        save_watch_contact(contact=WatchContact(business=house.business, name="B", told_by=told_by, **other))
    assert refused.value.field == "told_by"


def test_the_last_one_stays_while_the_watch_is_on(house):
    first, last = contacts(house)
    drop_watch_contact(contact=first)
    with pytest.raises(LastOnTheList):
        drop_watch_contact(contact=contacts(house).get(pk=last.pk))
    assert contacts(house).get() == last


def test_nor_can_the_last_one_be_given_to_one_of_two_vans_alone(house):
    contacts(house).exclude(name="N. Neighbour").delete()
    contact = contacts(house).get()
    contact.told_by, contact.phone = "sms", "0199 555 030"
    assert save_watch_contact(contact=contact).told_by == "sms"


def test_where_it_is_off_all_may_go(house):
    row = rules(house)
    row.is_on = False
    row.save()
    for contact in contacts(house):
        drop_watch_contact(contact=contact)
    assert not contacts(house).exists()


def test_for_a_van_with_nobody_on_the_list_those_of_the_others_are_told(house):
    """A van that was bought after the watch was switched on."""
    van = make_van(house.business, house.owner, "Van 2")
    WatchContact.objects.within(house.scope).update(van=house.van)
    farm = make_farm(house.business, "High Croft", by=house.owner)
    visit = under_way(farm, van)
    watch = LoneWatch.objects.within(house.scope).get(visit=visit)
    look(watch, 30), look(watch, 40)
    assert addresses(house)[-1] == "neighbour@home.example"
