"""A finished visit as the values its report is drawn from, as things stand now."""

from dataclasses import replace
from datetime import datetime

from trimops.kernel.scope import Scope
from visits.documents.visit_report_content import Signature, VetReferral, VisitReport
from visits.domain.cautions import FOR_THE_FARM
from visits.domain.feet import Foot
from visits.models import Referral, Visit
from visits.selectors.letterhead import letterhead_of
from visits.selectors.report_before import counted_before
from visits.selectors.report_cows import cow_lines
from visits.selectors.report_end import (
    consumables_used,
    hygiene_steps,
    signed_at,
    told_lines,
    told_words,
)
from visits.selectors.report_next import (
    block_lines,
    coming_visits,
    farm_tasks,
    next_visit_words,
)
from visits.selectors.visit_story import VisitStory, visit_story


def report_content(visit: Visit, made_at: datetime | None = None) -> VisitReport:
    """Everything the report of a finished visit says, with times in the business's zone."""
    report = seen_and_done(visit, made_at)
    counted = counted_before(visit, report.visit_day)
    return replace(
        report,
        whole_herd=counted.whole_herd,
        round_note=counted.round_note,
        compared=counted.compared,
        findings=counted.findings,
    )


def seen_and_done(visit: Visit, made_at: datetime | None = None) -> VisitReport:
    """The report without its counts: enough to see whether an issued one says all of it.

    It is told as the visit left it: what came later (a block that has come off since) is not in it.
    """
    farm, zone = visit.farm, visit.business.zone
    scope = Scope(visit.business_id)
    story = visit_story(scope, visit)
    finished = signed_at(visit)
    day, coming = finished.date(), coming_visits(visit)
    return VisitReport(
        letterhead=letterhead_of(visit.business),
        farm_name=farm.name,
        farm_address=tuple(farm.address.splitlines()),
        visit_day=day,
        made_at=made_at.astimezone(zone) if made_at else finished,
        started=visit.started_at.astimezone(zone) if visit.started_at else None,
        finished=finished,
        trimmers=_trimmers(visit, story),
        herd_size=farm.herd_size,
        whole_herd=False,
        cows=cow_lines(story),
        reference=f"no. {visit.pk}",
        vet=tuple(_vet_line(row, visit) for row in story.referrals),
        blocks=block_lines(visit, day),
        to_do=farm_tasks(story),
        consumables=consumables_used(scope, visit),
        hygiene_level=farm.get_hygiene_level_display(),
        hygiene_steps=hygiene_steps(scope, visit),
        next_visit=next_visit_words(visit, coming),
        signed=(Signature(visit.signed_by, "received it for the farm", finished),) if visit.signed_by else (),
        was_done=told_lines(visit.was_done),
        farm_to_do=told_lines(visit.farm_to_do),
        cautions=FOR_THE_FARM,
    )


def _trimmers(visit: Visit, story: VisitStory) -> tuple[str, ...]:
    names = dict.fromkeys(str(trim.recorded_by) for trim in story.trims)
    return tuple(names) or ((str(visit.van.trimmer),) if visit.van else ())


def _vet_line(row: Referral, visit: Visit) -> VetReferral:
    foot = Foot(row.foot) if row.foot else None
    return VetReferral(row.trim.cow.number, foot, row.reason, told_words(row, visit))
