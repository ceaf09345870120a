"""The bank on the pages of the office: files, matching at one press, one booking, a CSV's columns."""

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.test import Client
from django.urls import reverse

from invoicing.models import BankEntry, BankFile, BankMapping, Payment
from invoicing.web.bank_pages import read_tick
from tests.factories import make_house
from tests.invoicing.issued_papers import credited, issued
from tests.invoicing.services.test_note_payment import note

BANK = Path(__file__).parents[3] / "fixtures" / "bank"
JANUARY = date(2026, 1, 20)


@pytest.fixture
def house(house):
    house.business.currency = "EUR"
    house.business.save()
    return house


def send(office, name, content=None):
    content = (BANK / name).read_bytes() if content is None else content
    return office.post(reverse("bank"), {"file": SimpleUploadedFile(name, content)}, follow=True)


def entry(house, **fields):
    return BankEntry.objects.within(house.scope).get(**fields)


def test_entries_come_in_match_and_are_booked_at_one_press(house, office):
    sure = issued(house.farm, "250.40", JANUARY, number="INV-2026-0042")
    looked_at = issued(house.farm, "121", JANUARY, number="INV-2026-0043")
    page = send(office, "camt053_v02.xml")
    words = page.content.decode()
    assert "7 entries came in, 1 matches" in words
    assert "9 entries came in." in words
    (ticked,) = page.context["ticks"]
    assert ticked[1].endswith(f"{sure.pk}=250.40")
    answer = office.post(reverse("bank_accept"), {"tick": [ticked[1], "no:tick"]}, follow=True)
    assert "1 payment booked" in answer.content.decode()
    sure.refresh_from_db()
    looked_at.refresh_from_db()
    assert (sure.is_open, looked_at.is_open) == (False, True)
    again = office.post(reverse("bank_accept"), {"tick": [ticked[1]]}, follow=True)
    assert "matched already" in again.content.decode()
    assert Payment.objects.within(house.scope).count() == 1
    done = office.get(reverse("bank_done"))
    assert "Hof Quellenried" in done.content.decode()


def test_the_same_file_and_one_that_overlaps_bring_nothing_twice(house, office):
    send(office, "camt053_v02.xml")
    assert "was read before" in send(office, "camt053_v02.xml").content.decode()
    words = send(office, "camt053_v08_overlap.xml").content.decode()
    assert "2 entries came in, 4 had come before" in words
    assert "do not add up" in words
    assert BankEntry.objects.within(house.scope).count() == 11


def test_a_file_that_is_none_is_told(house, office):
    page = send(office, "x.xml", b"<Document/>")
    assert (page.status_code, "no CAMT.053" in page.content.decode()) == (400, True)
    assert office.post(reverse("bank"), {}).status_code == 400


def test_a_booking_is_matched_by_hand_for_another_farm(house, office):
    bill = issued(house.farm, "100", JANUARY)
    send(office, "camt053_v02.xml")
    row = entry(house, amount=120, party_name="Hof Quellenried")
    url = reverse("bank_entry", args=[row.pk])
    assert "What does €120.00 from Hof Quellenried pay?" in office.get(url).content.decode()
    assert office.post(url, {}).status_code == 400
    farm_url = f"{url}?farm={house.farm.pk}"
    shares = office.get(farm_url).context["form"].share_rows
    assert Decimal(shares[0].field.value()) == 100
    assert office.post(farm_url, {f"share_{bill.pk}": "121"}).status_code == 400
    office.post(farm_url, {f"share_{bill.pk}": "100"})
    payment = Payment.objects.within(house.scope).get()
    assert (payment.amount, payment.bank_entry, payment.payer_name) == (120, row, "Hof Quellenried")
    assert "booked for Low Croft" in office.get(url).content.decode()


def test_set_aside_and_back(house, office):
    send(office, "camt053_v02.xml")
    row = entry(house, amount=Decimal("97.50"))
    url = reverse("bank_aside", args=[row.pk])
    assert office.post(url, {"because": ""}).status_code == 409
    office.post(url, {"because": "Rent"})
    assert "Rent" in office.get(reverse("bank_entry", args=[row.pk])).content.decode()
    office.post(url, {"act": "back"})
    row.refresh_from_db()
    assert row.set_aside_at is None


def test_money_that_went_out_paid_back_a_rest_or_a_credit_note(house, office):
    payment = note(house, "80", currency="EUR")
    credit = credited(issued(house.farm, "100", JANUARY), "90")
    send(office, "camt053_v02.xml")
    back = entry(house, amount=-75)
    page = office.get(reverse("bank_entry", args=[back.pk]))
    assert {each.value for each in page.context["back"]} == {f"payment-{payment.pk}", f"credit-{credit.pk}"}
    office.post(reverse("bank_paid_back", args=[back.pk]), {"of": f"credit-{credit.pk}"})
    credit.refresh_from_db()
    assert credit.open_amount == 15
    other = entry(house, amount=Decimal("-89.90"))
    assert (
        office.post(reverse("bank_paid_back", args=[other.pk]), {"of": f"payment-{payment.pk}"}).status_code
        == 409
    )
    assert office.post(reverse("bank_paid_back", args=[other.pk]), {"of": "nonsense"}).status_code == 302


def columns(**more):
    told = {
        "encoding": "cp1252",
        "delimiter": ";",
        "decimal": ",",
        "day_format": "%d.%m.%Y",
        "header_rows": "2",
    }
    told |= {
        "footer_rows": "1",
        "day": "0",
        "amount": "1",
        "party": "2",
        "account": "3",
        "text": ["4"],
        "reference": "5",
    }
    return {**told, "name": "Our bank", **more}


def test_the_columns_of_a_csv_are_told_once(house, office):
    page = send(office, "semicolon_comma.csv")
    file = BankFile.objects.within(house.scope).get()
    url = reverse("bank_read", args=[file.pk])
    assert page.redirect_chain[-1][0] == url
    assert "Which column of semicolon_comma.csv" in page.content.decode()
    assert "is not read yet" in office.get(reverse("bank")).content.decode()
    wrong = office.post(url, columns(act="read", footer_rows="0"))
    assert (wrong.status_code, "is no day like" in wrong.content.decode()) == (400, True)
    unclear = office.post(url, columns(act="look", amount=""))
    assert "Choose one column for the amount" in unclear.content.decode()
    assert office.post(url, columns(act="look", day="")).status_code == 400
    seen = office.post(url, columns(act="look"))
    assert "3 entries in semicolon_comma.csv" in seen.content.decode()
    assert not BankEntry.objects.within(house.scope).exists()
    office.post(url, columns(act="read"))
    assert BankEntry.objects.within(house.scope).count() == 3
    kept = BankMapping.objects.within(house.scope).get()
    send(office, "next.csv", (BANK / "semicolon_comma.csv").read_bytes().replace(b"02.03", b"09.03"))
    newest = BankFile.objects.within(house.scope).get(read_at=None)
    asked = office.get(f"{reverse('bank_read', args=[newest.pk])}?mapping={kept.pk}")
    assert "3 entries in next.csv" in asked.content.decode()
    assert "was read" in office.get(url).content.decode()


def test_another_business_sees_none_of_it(house, office):
    theirs = make_house("Fell & Beck")
    stranger = Client()
    stranger.force_login(theirs.office)
    send(office, "camt053_v02.xml")
    row = entry(house, amount=120, party_name="Hof Quellenried")
    assert stranger.get(reverse("bank_entry", args=[row.pk])).status_code == 404
    stranger.post(reverse("bank_accept"), {"tick": f"{row.pk}:{house.farm.pk}:1=1"})
    assert not Payment.objects.within(house.scope).exists()
    assert "Nothing has come in" in stranger.get(reverse("bank")).content.decode()


@pytest.mark.parametrize(
    "text",
    [
        *("", "1", "1:2", "1:2:", "a:b:c", "1:2:3", "1:2:3=x", "1:2:3=1=2"),
        *("1:2:3=NaN", "1:2:3=sNaN", "1:2:3=Infinity", "1:2:3=1e99", "1:2:3=-1", "1:2:3=" + "9" * 40),
        *("9" * 40 + ":2:3=1", "1:" + "9" * 40 + ":3=1", "1:2:" + "9" * 40 + "=1", "-1:2:3=1", "²:2:3=1"),
    ],
)
def test_what_is_no_tick(text):
    assert read_tick(text) is None
