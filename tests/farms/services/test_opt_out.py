"""No more messages, by the person's own word."""

from datetime import timedelta

from farms.models import Contact
from farms.services.opt_out import opt_in, opt_out
from tests.factories import NOON


def ann(house):
    fields = {"business": house.business, "farm": house.farm, "part": "Owner", "told_by": "mail"}
    return Contact.objects.create(name="Ann", email="ann@farm.example", **fields)


def test_who_stops_has_no_address_any_more_and_the_first_moment_counts(house):
    contact = ann(house)
    assert contact.address_told == "ann@farm.example"
    assert opt_out(contact=contact, at=NOON).address_told == ""
    assert opt_out(contact=contact, at=NOON + timedelta(days=1)).opted_out_at == NOON


def test_who_wants_them_again_has(house):
    contact = opt_out(contact=ann(house), at=NOON)
    assert opt_in(contact=contact).address_told == "ann@farm.example"
