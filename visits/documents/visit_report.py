"""The report a farm gets of a visit, as PDF: A4, two pages for thirty cows."""

from trimops.paper.days import day_short_year
from trimops.paper.sheet import SheetInfo, build_sheet
from visits.documents.visit_report_content import VisitReport
from visits.documents.visit_report_cows import cows_part
from visits.documents.visit_report_end import end_part
from visits.documents.visit_report_findings import findings_part
from visits.documents.visit_report_top import report_title, report_top


def visit_report(report: VisitReport) -> bytes:
    """The PDF. The same report gives the same bytes. ValueError if `made_at` has no time zone."""
    story = [*report_top(report), *findings_part(report), *cows_part(report), *end_part(report)]
    day = day_short_year(report.visit_day)
    version = "" if report.version == 1 else f", version {report.version}"
    info = SheetInfo(
        title=report_title(report),
        author=report.letterhead.name,
        subject=f"Report of the foot trimming visit on {day}{version}",
        made_at=report.made_at,
        footer=f"{report.letterhead.name} · {report.farm_name} · visit of {day}{version}",
    )
    return build_sheet(story, info)
