"""The reports of a visit that left the house, and whether the newest still says all that is known."""

from dataclasses import dataclass

from trimops.kernel.scope import Scope
from visits.documents.stored_content import from_stored
from visits.documents.visit_report_change import report_changes
from visits.documents.visit_report_content import VisitReport
from visits.documents.visit_report_said import NO_BLOCK, NO_TASK, NO_VET, READING_AID, VET_ADVISED, ReportSaid
from visits.documents.visit_report_words import report_words
from visits.models import IssuedReport, Visit
from visits.selectors.report_content import seen_and_done


@dataclass(frozen=True)
class ReportState:
    """The versions of a visit's report, newest first and without their PDFs, and what has been noted since."""

    versions: tuple[IssuedReport, ...]
    since: tuple[str, ...]

    @property
    def newest(self) -> IssuedReport | None:
        return self.versions[0] if self.versions else None

    @property
    def is_behind(self) -> bool:
        """Whether something was noted, or mended, after the newest version was made."""
        return bool(self.since)

    @property
    def next_version(self) -> int:
        return self.versions[0].version + 1 if self.versions else 1


def report_state(scope: Scope, visit: Visit) -> ReportState:
    """For the page of a finished visit."""
    rows = IssuedReport.objects.within(scope).filter(visit=visit).defer("pdf").select_related("made_by")
    versions = tuple(rows.order_by("-version"))
    if not versions:
        return ReportState((), ())
    return ReportState(versions, report_changes(stored_report(versions[0]), seen_and_done(visit)))


def newest_report(scope: Scope, visit: Visit) -> IssuedReport | None:
    """The version in force, PDF and all; None when the report was not issued yet."""
    return IssuedReport.objects.within(scope).filter(visit=visit).order_by("-version").first()


def report_of_version(scope: Scope, visit: Visit, version: int) -> IssuedReport | None:
    return IssuedReport.objects.within(scope).filter(visit=visit, version=version).first()


def stored_report(row: IssuedReport) -> VisitReport:
    """What stands on that version, as values."""
    return from_stored(VisitReport, row.content)


def stored_words(row: IssuedReport) -> ReportSaid:
    """What stands on that version, in the words of its PDF: for a page (`visits/_report.html`)."""
    return report_words(stored_report(row))


def report_on_page(row: IssuedReport) -> dict[str, object]:
    """What `visits/_report.html` needs of an issued version."""
    said = stored_words(row)
    heads = [f"{head.label}, {head.seen} #" for head in said.counts.heads]
    return {
        "report": said,
        "count_columns": " | ".join(["Lesion seen", *heads]),
        "nothing": {"vet": NO_VET, "block": NO_BLOCK, "task": NO_TASK},
        "reading_aid": READING_AID,
        "vet_advised": VET_ADVISED,
    }
