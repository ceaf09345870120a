from tests.factories import NOON, blocked_foot, finish, put_down
from visits.models import IssuedReport, Recheck
from visits.selectors.issued_reports import stored_report
from visits.services.gather_farm_rechecks import gather_farm_rechecks
from visits.services.issue_finish_report import issue_finish_report
from visits.tasks import issue_report_task


def test_the_first_version_names_who_comes_for_the_blocks_whichever_job_is_done_first(house, visit):
    put_down(visit, house.cow, blocked_foot())
    finish(visit, house.trimmer)
    issue_report_task(visit.pk)
    row = IssuedReport.objects.within(house.scope).get(visit=visit)
    (block,) = stored_report(row).blocks
    assert block.who.startswith("we come by ")


def test_re_checks_gathered_before_or_after_stay_with_their_visit(house, visit):
    put_down(visit, house.cow, blocked_foot())
    finish(visit, house.trimmer)
    (booked,) = gather_farm_rechecks(farm=house.farm, today=NOON.date(), at=NOON)
    first = issue_finish_report(visit=visit, at=NOON)
    assert issue_finish_report(visit=visit, at=NOON) == first
    assert first.version == 1
    assert gather_farm_rechecks(farm=house.farm, today=NOON.date(), at=NOON) == [booked]
    assert Recheck.objects.within(house.scope).get().visit == booked
