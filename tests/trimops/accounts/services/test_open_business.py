from datetime import UTC, datetime

import pytest
from django.core.exceptions import ValidationError
from django.core.management import call_command

from trimops.accounts.models import Business, Membership
from trimops.accounts.roles import Role
from trimops.accounts.services.invite_person import Guest, membership_of_token
from trimops.accounts.services.open_business import open_business

pytestmark = pytest.mark.django_db
NOON = datetime(2026, 3, 2, 12, tzinfo=UTC)
OWNER = Guest("owner@new.example", "New Owner", Role.OWNER)


def test_a_business_opens_with_its_owner_invited():
    membership = open_business(business=Business(name="New Feet"), owner=OWNER, at=NOON)
    assert membership.role == Role.OWNER
    assert membership.joined_at is None


def test_a_wrong_zone_opens_nothing():
    with pytest.raises(ValidationError):
        open_business(business=Business(name="New Feet", timezone="Nowhere/Here"), owner=OWNER, at=NOON)
    assert not Membership.objects.exists()


def test_the_command_prints_a_way_in_that_works(capsys):
    call_command("open_business", "New Feet", "--owner", "New Owner", "--email", "owner@new.example")
    token = capsys.readouterr().out.split("/come-in/")[1].split("/")[0]
    assert membership_of_token(token).business.name == "New Feet"
