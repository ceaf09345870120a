"""Who changed what: of a visit, a farm, an invoice, a person, and all of it."""

from collections.abc import Iterator

from django.urls import reverse

from farms.models import Contact
from invoicing.models import Payment, PriceList
from tests.browser.small_round import Round
from trimops.accounts.roles import Role
from trimops.watch.doing import Doing, done_by


def audit_pages(r: Round) -> Iterator[str]:
    """A contact was noted, mended and taken away, from a desk and by the program."""
    house = r.house
    contact = Contact.objects.create(
        business=house.business, farm=house.farm, name="Ida Reed", part="herd", phone="01632 960001"
    )
    with done_by(Doing(house.owner.pk, "POST contact", "2001:db8:85a3:8d3:1319:8a2e:370:7348")):
        contact.phone = "01632 960002"
        contact.save()
    contact.delete()
    yield reverse("changes")
    yield reverse("visit_changes", args=[r.finished.pk])
    yield reverse("cow_changes", args=[house.cow.pk])
    yield reverse("farm_changes", args=[house.farm.pk])
    yield reverse("van_changes", args=[house.van.pk])
    yield reverse("invoice_changes", args=[r.issued.pk])
    yield reverse("payment_changes", args=[Payment.objects.within(house.scope).first().pk])
    yield reverse("price_list_changes", args=[PriceList.objects.within(house.scope).first().pk])
    yield reverse("member_changes", args=[house.memberships[Role.FARM].pk])
