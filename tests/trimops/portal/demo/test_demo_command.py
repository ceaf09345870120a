"""`manage.py demo` in a small form: it builds, plans, records, writes its eleven files, and can be run again."""

import json
from dataclasses import dataclass
from io import StringIO
from pathlib import Path

import icalendar
import pytest
from django.core.management import CommandError, call_command
from django.db import transaction
from lxml import etree

from farms.models import Cow, Farm
from invoicing.domain.camt053 import read_camt053
from invoicing.models import Invoice, Reminder
from trimops.accounts.models import Business, User
from trimops.kernel.scope import Scope
from trimops.portal.demo.papers import ORDER
from trimops.portal.demo.ready_visit import visit_to_begin
from visits.domain.planning.audit import audit_week
from visits.models import IssuedReport, Recheck, ReferralLetter, Trim, Visit, WashDown
from visits.selectors.crush_papers import crush_papers

pytestmark = pytest.mark.django_db
FIXTURES = Path(__file__).parents[4] / "fixtures"
SMALL = {"farms": 4, "months": 3, "seconds": 0.2, "today": "2026-11-23"}


def run(folder, **changes):
    said = StringIO()
    words = [f"--{name}={value}" for name, value in {**SMALL, **changes, "output": folder}.items()]
    call_command("demo", *words, stdout=said)
    return said.getvalue()


def scope():
    return Scope(Business.objects.get().pk)


def counts():
    found = {
        m.__name__: m.objects.within(scope()).count() for m in (Farm, Cow, Visit, Trim, Recheck, Invoice)
    }
    return {**found, "User": User.objects.count()}


def test_a_database_with_another_business_is_left_alone(tmp_path):
    Business.objects.create(name="Somebody else")
    with pytest.raises(CommandError, match="Somebody else"):
        run(tmp_path / "none")
    assert not (tmp_path / "none").exists()
    assert list(Business.objects.values_list("name", flat=True)) == ["Somebody else"]


def test_without_a_demo_the_sign_ins_say_how_to_get_one():
    said = StringIO()
    call_command("demo_signins", stdout=said)
    assert "make demo" in said.getvalue()


@dataclass(frozen=True)
class Built:
    folder: Path
    said: str


@pytest.fixture(scope="module")
def built(django_db_setup, django_db_blocker, tmp_path_factory):
    """The small demo, built once for all tests of this file that only look at it; taken back after the last."""
    folder = tmp_path_factory.mktemp("demo")
    with django_db_blocker.unblock(), transaction.atomic():
        yield Built(folder, run(folder))
        transaction.set_rollback(True)


def test_it_writes_eleven_files_that_open_and_says_what_it_did(built):
    said = built.said
    assert sorted(path.name for path in built.folder.iterdir()) == sorted(ORDER)
    assert all(str(built.folder / name) in said for name in ORDER)
    assert all(path.read_bytes().startswith(b"%PDF-") for path in built.folder.glob("*.pdf"))
    problem, plan = (json.loads((built.folder / name).read_text()) for name in ORDER[:2])
    assert audit_week(problem, plan) == []
    events = icalendar.Calendar.from_ical((built.folder / "calendar.ics").read_bytes()).walk("VEVENT")
    assert events
    for part in ("Owner", "Trimmer", "Office", "Farm client"):
        assert part in said


def test_the_visit_made_has_a_block_a_dermatitis_and_one_for_the_vet_and_its_invoice_is_issued(built):
    invoice = Invoice.objects.within(scope()).issued().order_by("-issued_on", "-number").first()
    trims = Trim.objects.within(scope()).filter(visit=invoice.visit)
    assert 3 <= trims.count() <= 12
    assert trims.filter(feet__actions__kind="block").exists()
    assert trims.filter(feet__findings__dd_stage="M2").exists()
    assert trims.filter(referrals__isnull=False).exists()
    assert bytes(invoice.papers.pdf) == (built.folder / "invoice.pdf").read_bytes()


def test_one_visit_of_today_is_left_ready_at_the_crush_with_much_to_see(built):
    said = built.said
    visit = visit_to_begin(Business.objects.get())
    assert (visit.state, f"{visit.planned_start:%Y-%m-%d}") == ("confirmed", SMALL["today"])
    assert f"http://127.0.0.1:8000/visits/{visit.pk}/crush/" in said
    papers = crush_papers(scope(), visit, by=visit.van.trimmer, now=visit.planned_start)
    cows = {cow["id"]: cow for cow in papers["cows"]}
    listed = [cows[key] for key in papers["queue"]]
    assert [cow["is_lame"] for cow in listed[:4]] == [True, True, True, False]
    assert any(cow["rechecks"] for cow in listed)
    assert any(cow["blocks"] for cow in listed)
    assert any(cow["last"] for cow in listed)
    assert all(item["in_van"] > 0 for item in papers["consumables"])


def test_the_visit_made_was_washed_down_and_signed_off_in_words(built):
    made = Invoice.objects.within(scope()).issued().order_by("-issued_on", "-number").first().visit
    assert made.was_done
    assert "Ring the vet today" in made.farm_to_do
    assert WashDown.objects.within(scope()).get(visit=made).dilution == "1:100"
    (report,) = IssuedReport.objects.within(scope()).filter(visit=made)
    assert bytes(report.pdf) == (built.folder / "visit-report.pdf").read_bytes()
    assert ReferralLetter.objects.within(scope()).filter(trim__visit=made).exists()
    assert IssuedReport.objects.within(scope()).count() == SMALL["farms"] + 1


def test_the_last_visits_are_billed_with_numbers_without_a_gap(built):
    bills = Invoice.objects.within(scope()).issued().bills()
    issued = bills.order_by("number").values_list("number", flat=True)
    assert [int(number.rsplit("-", 1)[1]) for number in issued] == list(range(1, len(issued) + 1))
    days = list(bills.order_by("number").values_list("issued_on", flat=True))
    assert days == sorted(days)
    assert Invoice.objects.within(scope()).drafts().exists()


def test_the_money_is_settled_in_part_and_its_papers_agree(built):
    papers = Invoice.objects.within(scope()).issued()
    assert papers.credit_notes().exists()
    assert {True, False} == set(papers.bills().values_list("is_open", flat=True))
    assert Reminder.objects.within(scope()).exists()
    newest = papers.bills().order_by("-number").first()
    xml = (built.folder / "invoice.xml").read_bytes()
    assert xml == bytes(newest.papers.cii)
    assert etree.fromstring(xml).findtext(".//{*}DuePayableAmount") == f"{newest.payable:.2f}"


def test_the_bank_statement_is_one_by_its_schema_and_is_read_without_a_warning(built):
    content = (built.folder / "bank-statement.xml").read_bytes()
    schema = etree.XMLSchema(etree.parse(FIXTURES / "bank" / "camt.053.001.08.xsd"))
    schema.assertValid(etree.fromstring(content))
    (statement,) = read_camt053(content)
    assert statement.lines
    assert not statement.warnings


def test_at_most_one_recheck_is_open_per_foot(built):
    open_feet = list(Recheck.objects.within(scope()).open().values_list("cow_id", "foot"))
    assert open_feet
    assert len(open_feet) == len(set(open_feet))


def test_it_can_be_run_again_and_gives_the_same(built, tmp_path):
    first = counts()
    run(tmp_path)
    assert counts() == first
    assert Business.objects.count() == 1


def test_everybody_can_sign_in_with_the_printed_password(built):
    said = StringIO()
    call_command("demo_signins", stdout=said)
    people = User.objects.all()
    assert people.count() == 4
    for user in people:
        assert user.email in said.getvalue()
        assert user.check_password("quiet-hooves-54")
