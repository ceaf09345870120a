import pytest
from django.core.exceptions import ValidationError
from django.test import Client
from django.urls import reverse

from tests.factories import make_business, make_member
from trimops.accounts.models import Membership
from trimops.accounts.roles import Role
from trimops.accounts.services.save_own_ways import save_own_ways


@pytest.mark.django_db
def test_they_hold_in_this_business_alone():
    here = make_member(make_business(), Role.TRIMMER)
    there = make_member(make_business("Elm & Oak"), Role.TRIMMER, here.user)
    save_own_ways(membership=here, phone=" +44 1632 960001 ", evening_mail=True)
    told = {row.pk: (row.phone, row.evening_mail) for row in Membership.objects.all()}
    assert told == {here.pk: ("+44 1632 960001", True), there.pk: ("", False)}


@pytest.mark.django_db
def test_a_number_that_is_too_long_is_refused_and_nothing_changes():
    member = make_member(make_business(), Role.TRIMMER)
    with pytest.raises(ValidationError):
        save_own_ways(membership=member, phone="0" * 41, evening_mail=True)
    assert not Membership.objects.get(pk=member.pk).evening_mail


@pytest.mark.django_db
def test_on_the_page_a_trimmer_switches_the_evening_mail_on_and_off():
    member, client = make_member(make_business(), Role.TRIMMER), Client()
    client.force_login(member.user)
    for words, expected in (({"phone": "01632", "evening_mail": "on"}, True), ({"phone": "01632"}, False)):
        assert client.post(reverse("own_ways"), words).status_code == 302
        assert Membership.objects.get(pk=member.pk).evening_mail is expected
    assert "01632" in client.get(reverse("own_ways")).content.decode()
