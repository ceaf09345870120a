"""One farm's account, and who owes how much, on the pages of the office."""

from decimal import Decimal

from django.urls import reverse

from invoicing.models import Sending
from tests.factories import make_farm, make_house
from tests.invoicing.issued_papers import issued
from tests.invoicing.services.test_note_payment import note
from trimops.outbox.models import OutgoingPart


def test_the_account_runs_and_its_statement_is_drawn_and_sent(house, office):
    bill = issued(house.farm, "60")
    note(house, "25", {bill.pk: Decimal(25)})
    url = f"{reverse('farm_account', args=[house.farm.pk])}?first=2026-01-01&last=2026-03-31"
    page = office.get(url)
    assert "Low Croft owes £35.00" in page.content.decode()
    assert [shown.line.balance for shown in page.context["page"]] == [60, 35]
    pdf = office.get(f"{reverse('farm_statement', args=[house.farm.pk])}?first=2026-01-01&last=2026-03-31")
    assert pdf.content.startswith(b"%PDF")
    told = {"first": "2026-01-01", "last": "2026-03-31"}
    assert office.post(url, told).status_code == 409
    house.farm.email = "money@example.invalid"
    house.farm.save()
    office.post(url, told)
    sending = Sending.objects.within(house.scope).get()
    part = OutgoingPart.objects.within(house.scope).get()
    assert (sending.outgoing.address, part.name) == (
        "money@example.invalid",
        "statement-20260101-20260331.pdf",
    )
    assert "35.00 GBP" in sending.outgoing.body


def test_a_time_that_makes_no_sense_is_the_last_half_year_and_turned_days_are_turned(house, office):
    account = reverse("farm_account", args=[house.farm.pk])
    assert office.get(f"{account}?first=x&last=9").status_code == 200
    page = office.get(f"{account}?first=2026-03-31&last=2026-01-01")
    assert page.context["account"].first.month == 1


def test_who_owes_what(house, office):
    assert "Everything is paid" in office.get(reverse("money_overdue")).content.decode()
    second = make_farm(house.business, "High Croft", by=house.owner)
    issued(house.farm, "60")
    issued(second, "100")
    issued(second, "7", currency="EUR")
    page = office.get(reverse("money_overdue"))
    assert "£160.00 is overdue, of £160.00" in page.content.decode()
    assert [debtor.farm_name for debtor in page.context["page"]] == ["High Croft", "Low Croft"]
    euro = office.get(f"{reverse('money_overdue')}?currency=EUR")
    assert "€7.00 is overdue" in euro.content.decode()


def test_another_business_sees_none_of_it(house, office):
    theirs = make_house("Fell & Beck")
    issued(theirs.farm, "60")
    assert office.get(reverse("farm_account", args=[theirs.farm.pk])).status_code == 404
    assert office.get(reverse("farm_statement", args=[theirs.farm.pk])).status_code == 404
    assert "Fell" not in office.get(reverse("money_overdue")).content.decode()
