"""Taking data out through the pages."""

import csv
import io
import json
import zipfile
from datetime import timedelta
from decimal import Decimal

import pypdfium2 as pdfium
import pytest
from django.db import transaction
from django.test import Client
from django.urls import reverse
from django.utils import timezone
from openpyxl import load_workbook

from farms.selectors.erasures import open_erasure
from invoicing.domain.settling import PaymentMethod
from invoicing.models import Invoice
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from invoicing.services.note_payment import MoneyReceived, note_payment
from tests.factories import (
    blocked_foot,
    finish,
    make_cow,
    make_farm,
    make_house,
    make_prices,
    photo_of,
    put_down,
    under_way,
)
from tests.standards.test_ade import faults_of
from trimops.accounts.roles import FarmRight
from visits.services.issue_letter import issue_letter
from visits.services.issue_report import issue_first_report


@pytest.fixture(scope="module")
def made(django_db_setup, django_db_blocker):
    """Work on the client's farm and on the one beside it, with a paper and a photo of each."""
    with django_db_blocker.unblock(), transaction.atomic():
        yield work_in(make_house())
        transaction.set_rollback(True)


@pytest.fixture
def house(made, db):
    return made


def work_in(house):
    make_prices(house.business)
    second = make_farm(house.business, "High Croft", by=house.owner)
    now = timezone.now()
    for days, (farm, number) in enumerate(((house.farm, "=7741"), (second, "9393"))):
        visit = under_way(farm, house.van, now - timedelta(days=5 + days))
        trim = put_down(visit, make_cow(farm, number), blocked_foot(for_vet="hot"))
        photo_of(trim)
        finish(visit, house.trimmer)
        issue_first_report(visit=visit, at=now)
        issue_letter(trim=trim, at=now, by=house.trimmer)
        issue_invoice(invoice=draft_invoice(visit=visit, at=now), at=now, by=house.office)
    return house


def files_in(answer):
    assert answer.status_code == 200
    assert "no-store" in answer["Cache-Control"]
    content = b"".join(answer.streaming_content)
    with zipfile.ZipFile(io.BytesIO(content)) as parts:
        assert parts.testzip() is None
        return {name: parts.read(name) for name in parts.namelist()}


def test_everything_holds_tables_papers_photos_and_nothing_of_the_farm_beside_it(house, client):
    files = files_in(client.post(reverse("portal_data_all")))
    kinds = {name.split("/")[0] for name in files}
    of_money = {"invoices", "money", "invoices and payments.xlsx"}
    assert kinds == {"tables", "cows and feet.xlsx", "icar ade", "papers", "photos"} | of_money
    assert len([name for name in files if name.startswith("papers/")]) == 2
    assert len([name for name in files if name.startswith("photos/")]) == 1
    assert b"'=7741" in files["tables/cows.csv"]
    for name, content in files.items():
        assert b"9393" not in content or name.startswith(("papers", "photos", "invoices/")), name
        assert b"High Croft" not in content, name


def test_the_money_comes_as_papers_tables_and_account_in_the_same_bytes_and_sums(house, client):
    bill = Invoice.objects.within(house.scope).select_related("papers").get(farm=house.farm)
    five = Decimal(5)
    part = MoneyReceived(house.farm, bill.issued_on, five, "GBP", PaymentMethod.CASH, {bill.pk: five})
    note_payment(money=part, at=timezone.now(), by=house.office)
    files = files_in(client.post(reverse("portal_data_all")))
    name = f"invoices/{bill.issued_on} {bill.number}"
    assert files[f"{name}.pdf"] == bytes(bill.papers.pdf)
    assert files[f"{name}, CII.xml"] == bytes(bill.papers.cii)
    assert files[f"{name}, UBL.xml"] == bytes(bill.papers.ubl)
    (told,) = csv.DictReader(io.StringIO(files["money/invoices.csv"].decode("utf-8-sig")))
    assert (told["Number"], Decimal(told["With tax"])) == (bill.number, bill.gross)
    assert (Decimal(told["Settled"]), Decimal(told["Left"])) == (5, bill.payable - 5)
    statement = pdfium.PdfDocument(files["money/account GBP.pdf"])[0].get_textpage().get_text_range()
    assert f"£{bill.payable - 5:.2f}" in statement
    book = load_workbook(io.BytesIO(files["invoices and payments.xlsx"]))
    assert book.sheetnames == ["invoices", "payments", "what settled what", "account"]
    assert book["account"]["F3"].value == float(bill.payable - 5)


def test_without_the_right_to_see_money_there_is_nothing_of_it(house, client, rights):
    rights(FarmRight.HANDS_OVER)
    names = list(files_in(client.post(reverse("portal_data_all"))))
    assert not [name for name in names if name.startswith(("invoices", "money"))]
    assert "invoice" not in client.get(reverse("portal_data")).content.decode()


def test_the_tables_come_as_csv_and_as_a_spreadsheet(house, client):
    tables = files_in(client.get(reverse("portal_data_csv")))
    assert {"cows.csv", "trims.csv", "findings.csv", "read me first.txt"} <= set(tables)
    answer = client.get(reverse("portal_data_xlsx"))
    book = load_workbook(io.BytesIO(answer.content))
    assert "=7741" in [cell.value for cell in book["cows"]["B"]]
    assert [f"{name}.csv" for name in book.sheetnames] == [name for name in tables if name.endswith("csv")]


def test_the_exchange_comes_with_the_proposed_word_only_if_asked(house, client):
    plain = files_in(client.get(reverse("portal_data_ade")))
    asked = files_in(client.get(reverse("portal_data_ade") + "?common=1"))
    assert b"commonProcedure" not in plain["treatments.json"]
    assert b"commonProcedure" in asked["treatments.json"]
    (seen,) = json.loads(plain["diagnoses.json"])["member"]
    assert seen["location"]["id"] == str(house.farm.pk)
    told = [json.loads(part) for name, part in plain.items() if name.endswith(".json")]
    for member in [member for document in told for member in document["member"]]:
        assert faults_of(member, member["resourceType"]) == []


def test_the_office_hands_it_over_too_and_that_is_noted_in_the_farms_wish(house, client):
    client.post(reverse("portal_erase"), {"note": "We stop milking"})
    office = Client()
    office.force_login(house.office)
    files = files_in(office.post(reverse("farm_data_all", args=[house.farm.pk])))
    assert [name for name in files if name.startswith("invoices/")]
    wish = open_erasure(house.scope, house.farm)
    assert [line["by"] for line in wish.outcome["taken out"]] == [house.office.pk]


def test_a_wish_to_be_erased_is_made_seen_by_staff_and_taken_back(house, client):
    assert client.post(reverse("portal_erase"), {"note": "We stop milking"}).status_code == 302
    owner = Client()
    owner.force_login(house.owner)
    assert "to be erased" in owner.get(reverse("farm", args=[house.farm.pk])).content.decode()
    assert "We stop milking" in owner.get(reverse("farm_data", args=[house.farm.pk])).content.decode()
    wish = open_erasure(house.scope, house.farm)
    client.post(reverse("portal_erase_back", args=[wish.pk]))
    assert open_erasure(house.scope, house.farm) is None
