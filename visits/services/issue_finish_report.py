"""The report that follows the finish of a visit."""

from datetime import datetime

from trimops.kernel.clock import local_day
from visits.models import IssuedReport, Visit
from visits.services.gather_farm_rechecks import gather_farm_rechecks
from visits.services.issue_report import issue_first_report


def issue_finish_report(*, visit: Visit, at: datetime) -> IssuedReport:
    """The first version, once it is known who comes for the blocks: the farm's re-checks are gathered first, whether or
    not their own job was done before. Two transactions, so that the farm is not locked while the paper is drawn."""
    farm = visit.farm
    gather_farm_rechecks(farm=farm, today=local_day(at, farm.business.zone), at=at)
    return issue_first_report(visit=visit, at=at)
