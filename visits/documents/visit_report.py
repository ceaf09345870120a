"""The report a farm gets of a visit, as PDF: A4, two pages for thirty cows of whom half have something to tell."""

from reportlab.platypus import Flowable

from trimops.paper.days import day_short_year
from trimops.paper.footing import footing
from trimops.paper.sheet import SheetInfo, build_counted
from visits.documents.visit_report_content import VisitReport
from visits.documents.visit_report_cows import cows_part
from visits.documents.visit_report_end import end_part
from visits.documents.visit_report_findings import findings_part
from visits.documents.visit_report_said import ReportSaid
from visits.documents.visit_report_sizes import LARGE, LESS, Sizes
from visits.documents.visit_report_top import report_top
from visits.documents.visit_report_words import report_words

WISHED_PAGES = 2


def visit_report(report: VisitReport) -> bytes:
    """The PDF. The same report gives the same bytes. ValueError if `made_at` has no time zone.

    Set large; somewhat smaller where that saves one of more than two pages.
    """
    said = report_words(report)
    day = day_short_year(report.visit_day)
    version = "" if report.version == 1 else f", version {report.version}"
    info = SheetInfo(
        title=said.title,
        author=report.letterhead.name,
        subject=f"Report of the foot trimming visit on {day}{version}",
        made_at=report.made_at,
        footer=footing((report.letterhead.name, report.farm_name), f"visit of {day}{version}"),
    )
    pdf, pages = build_counted(_story(report, said, LARGE), info)
    if pages <= WISHED_PAGES:
        return pdf
    smaller, fewer = build_counted(_story(report, said, LESS), info)
    return smaller if fewer < pages else pdf


def _story(report: VisitReport, said: ReportSaid, sizes: Sizes) -> list[Flowable]:
    return [
        *report_top(report.letterhead, said, sizes),
        *findings_part(said.counts, sizes),
        *cows_part(said, sizes),
        *end_part(said, sizes),
    ]
