"""Papers that left the house: reports of the last visits, letters to the vet of the visit that was made."""

from datetime import datetime

from trimops.kernel.scope import Scope
from trimops.portal.demo.build_people import Crew
from visits.models import ReferralLetter, Visit
from visits.selectors.issued_letters import cows_for_vet
from visits.services.issue_letter import issue_letter
from visits.services.issue_missing_reports import issue_missing_reports


def issue_last_reports(crew: Crew, at: datetime, most: int) -> int:
    """How many were issued. Each is drawn as a PDF, so the whole history would take minutes."""
    return len(issue_missing_reports(scope=Scope(crew.business.pk), at=at, most=most))


def write_letters(crew: Crew, visit: Visit, at: datetime) -> list[ReferralLetter]:
    """A letter for each cow of the visit that is the vet's."""
    by = crew.people["owner"]
    return [issue_letter(trim=line.trim, at=at, by=by) for line in cows_for_vet(visit.scope, visit)]
