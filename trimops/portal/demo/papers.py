"""The eleven files of the demo, from the same selectors and documents as the pages use."""

import json
from collections import Counter
from datetime import datetime, timedelta
from pathlib import Path

from farms.models import Farm
from invoicing.documents.statement_pdf import statement_pdf
from invoicing.models import Invoice
from invoicing.selectors.money_rules import money_rules
from invoicing.selectors.statement_content import statement_content
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from trimops.portal.demo.bank_statement import bank_statement
from trimops.portal.demo.build_people import Crew
from trimops.portal.demo.plan_the_week import PlannedWeek
from trimops.portal.demo.record_one_visit import MadeVisit
from visits.documents.calendar_feed import calendar_feed
from visits.documents.draft_list import draft_list
from visits.documents.herd_year import herd_year
from visits.models import ReferralLetter, Trim, Visit
from visits.selectors.calendar_content import calendar_answer
from visits.selectors.draft_content import draft_content
from visits.selectors.herd_view import herd_year_story
from visits.services.issue_report import issue_first_report
from visits.services.make_calendar_address import FeedWish, make_calendar_address

A_QUARTER = timedelta(days=91)
ORDER = (
    "week-problem.json",
    "week-plan.json",
    "draft-list.pdf",
    "visit-report.pdf",
    "letter-to-the-vet.pdf",
    "herd-year.pdf",
    "invoice.pdf",
    "invoice.xml",
    "account.pdf",
    "bank-statement.xml",
    "calendar.ics",
)


def write_week(folder: Path, week: PlannedWeek) -> None:
    """The week as it was asked and as it was planned."""
    _write_json(folder / "week-problem.json", week.problem)
    _write_json(folder / "week-plan.json", week.plan)


def write_draft_list(folder: Path, visit: Visit, at: datetime) -> None:
    """The cows to bring; made before the visit, while they are still to come."""
    (folder / "draft-list.pdf").write_bytes(draft_list(draft_content(visit, at)))


def write_after_visit(folder: Path, made: MadeVisit) -> None:
    """The report of the visit and the invoice, exactly as they are kept."""
    report = issue_first_report(
        visit=made.visit, at=made.visit.finished_at or made.visit.changed_at, tell=False
    )
    (folder / "visit-report.pdf").write_bytes(bytes(report.pdf))
    (folder / "invoice.pdf").write_bytes(bytes(made.invoice.papers.pdf if made.invoice.papers else b""))
    (folder / "invoice.xml").write_bytes(bytes(made.invoice.papers.cii if made.invoice.papers else b""))


def write_money(folder: Path, made: MadeVisit, at: datetime) -> None:
    """The account of the farm that owes longest, and a bank statement that pays some of what is open."""
    scope = Scope(made.invoice.business_id)
    owed = Invoice.objects.within(scope).issued().bills().filter(is_open=True, settled=0).order_by("due_on")
    invoices = list(owed.select_related("farm__business", "farm__payer"))
    farm = invoices[0].farm if invoices else made.invoice.farm
    today = local_day(at, farm.business.zone)
    account = statement_content(scope, farm, today - A_QUARTER, today, at)
    (folder / "account.pdf").write_bytes(statement_pdf(account))
    statement = bank_statement(invoices[1:5], money_rules(scope).iban, today)
    (folder / "bank-statement.xml").write_bytes(statement)


def write_letter(folder: Path, letters: list[ReferralLetter]) -> None:
    """The letter of the first cow that is the vet's."""
    (folder / "letter-to-the-vet.pdf").write_bytes(bytes(letters[0].pdf))


def write_herd_year(folder: Path, made: MadeVisit, at: datetime) -> None:
    """The yearly paper of a herd that is seen as a whole, if the client has one: of the year with most cows seen."""
    scope = made.visit.scope
    trims = Trim.objects.within(scope)
    theirs = trims.filter(visit__farm__accesses__isnull=False).order_by("-visit__farm__accesses__id").first()
    farm = Farm.objects.within(scope).get(pk=theirs.visit.farm_id if theirs else made.visit.farm_id)
    seen = Counter(
        trims.filter(visit__farm=farm, recorded_at__lte=at).values_list("recorded_at__year", flat=True)
    )
    year = seen.most_common(1)[0][0] if seen else at.year
    (folder / "herd-year.pdf").write_bytes(herd_year(herd_year_story(scope, farm, year, at)))


def write_calendar(folder: Path, crew: Crew, at: datetime) -> str:
    """The calendar of both vans, and the secret of its new address."""
    address = make_calendar_address(
        business=crew.business, wish=FeedWish("Both vans (demo)"), at=at, by=crew.people["owner"]
    )
    if found := calendar_answer(address.secret, at):
        (folder / "calendar.ics").write_bytes(calendar_feed(found.content()))
    return address.secret


def _write_json(path: Path, document: dict[str, object]) -> None:
    path.write_text(json.dumps(document, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
