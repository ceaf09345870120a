"""The six files of the demo, from the same selectors and documents as the pages use."""

import json
from datetime import datetime
from pathlib import Path

from trimops.portal.demo.build_people import Crew
from trimops.portal.demo.plan_the_week import PlannedWeek
from trimops.portal.demo.record_one_visit import MadeVisit
from visits.documents.calendar_feed import calendar_feed
from visits.documents.draft_list import draft_list
from visits.documents.visit_report import visit_report
from visits.models import Visit
from visits.selectors.calendar_content import calendar_content
from visits.selectors.draft_content import draft_content
from visits.selectors.report_content import report_content
from visits.services.make_calendar_address import make_calendar_address

ORDER = (
    "week-problem.json",
    "week-plan.json",
    "draft-list.pdf",
    "visit-report.pdf",
    "invoice.pdf",
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
    """The report of the visit, and the invoice exactly as it is kept."""
    (folder / "visit-report.pdf").write_bytes(visit_report(report_content(made.visit)))
    (folder / "invoice.pdf").write_bytes(bytes(made.invoice.pdf or b""))


def write_calendar(folder: Path, crew: Crew, at: datetime) -> str:
    """The calendar of both vans, and the secret of its new address."""
    address = make_calendar_address(
        business=crew.business, name="Both vans (demo)", at=at, by=crew.people["owner"]
    )
    (folder / "calendar.ics").write_bytes(calendar_feed(calendar_content(address.row, at)))
    return address.secret


def _write_json(path: Path, document: dict[str, object]) -> None:
    path.write_text(json.dumps(document, indent=1, ensure_ascii=False) + "\n", encoding="utf-8")
