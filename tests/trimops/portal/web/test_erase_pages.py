"""The owner erases a farm through the pages."""

from django.test import Client
from django.urls import reverse

from farms.models import Cow, Farm
from tests.factories import MONDAY
from tests.invoicing.drafts import plain_draft
from tests.invoicing.issued_papers import issued


def owner_of(house):
    browser = Client()
    browser.force_login(house.owner)
    return browser


def test_another_name_erases_nothing_and_says_what_to_type(house):
    answer = owner_of(house).post(reverse("farm_erase", args=[house.farm.pk]), {"typed_name": "Low"})
    assert answer.status_code == 409
    assert "Low Croft" in answer.content.decode()
    assert Cow.objects.within(house.scope).exists()


def test_the_farm_is_erased_leaves_the_lists_and_its_client_sees_nothing_more(house, client):
    owner = owner_of(house)
    answer = owner.post(reverse("farm_erase", args=[house.farm.pk]), {"typed_name": "Low Croft"})
    assert answer["Location"] == reverse("farm_data", args=[house.farm.pk])
    assert not Cow.objects.within(house.scope).exists()
    told = owner.get(answer["Location"]).content.decode()
    assert "only its invoices and payments are kept" in told
    assert "Low Croft" not in told
    assert "Erased farm" not in owner.get(reverse("farm_list")).content.decode()
    assert owner.get(reverse("farm", args=[house.farm.pk])).status_code == 200
    assert client.get(reverse("portal_home")).status_code in (302, 403)
    assert Farm.objects.within(house.scope).get().erased_at is not None


def test_what_is_owed_and_not_billed_is_told_before_and_keeps_nobody_from_erasing(house):
    owner, address = owner_of(house), reverse("farm_erase", args=[house.farm.pk])
    assert "Not done yet" not in owner.get(address).content.decode()
    issued(house.farm, "412.80", due_on=MONDAY)
    plain_draft(house)
    told = owner.get(address).content.decode()
    assert "£412.80 is to be paid, all of it overdue" in told
    assert "1 draft is not issued" in told
    assert "invoices (1)" in told
    done = owner.post(address, {"typed_name": "Low Croft"})
    told = owner.get(done["Location"]).content.decode()
    assert "Invoices: 1" in told
    account = reverse("farm_account", args=[house.farm.pk])
    assert account in told
    assert "£412.80" in owner.get(account).content.decode()
