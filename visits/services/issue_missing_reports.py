"""Reports of visits from before reports were kept, issued in one go. Nobody is told by mail: it is no news."""

from datetime import datetime

from trimops.kernel.scope import Scope
from visits.models import IssuedReport
from visits.selectors.reports_missing import visits_without_report
from visits.services.issue_report import issue_first_report


def issue_missing_reports(*, scope: Scope, at: datetime, most: int | None = None) -> list[IssuedReport]:
    """The newest visits first, at most so many; each report is a transaction of its own, so it can be stopped and
    begun again."""
    visits = visits_without_report(scope, most)
    return [issue_first_report(visit=visit, at=at, tell=False) for visit in visits]
