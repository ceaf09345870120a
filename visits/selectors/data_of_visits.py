"""The tables of a farm's visits and of what follows from them."""

from datetime import date, datetime
from zoneinfo import ZoneInfo

from farms.models import Farm
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.documents.data_table import DataTable, yes_no
from visits.domain.actions import BlockKind
from visits.domain.feet import Claw, Foot
from visits.domain.mobility import MobilityScale
from visits.domain.recheck_due import RecheckCause
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import AskedCow, Block, Recheck, Visit, WashDown
from visits.selectors.messages.told_lines import told_lines


def visit_tables(scope: Scope, farm: Farm, zone: ZoneInfo) -> list[DataTable]:
    """Visits, cows asked for, messages, wash-downs, blocks and re-checks. Seven queries."""
    return [
        _visits(scope, farm, zone),
        _asked(scope, farm),
        _messages(scope, farm, zone),
        _wash_downs(scope, farm, zone),
        _blocks(scope, farm),
        _rechecks(scope, farm),
    ]


def _visits(scope: Scope, farm: Farm, zone: ZoneInfo) -> DataTable:
    rows = Visit.objects.within(scope).filter(farm=farm).order_by("due_from", "pk")
    found = [
        (
            *(row.pk, VisitReason(row.reason).label, VisitState(row.state).label, row.asked_by),
            *(local_day(row.asked_at, zone), row.due_from, row.due_until, row.head_count),
            *(_day(row.started_at or row.planned_start, zone), _clock(row.started_at, zone)),
            *(_clock(row.finished_at, zone), row.note, row.signed_by, row.was_done, row.farm_to_do),
            *(yes_no(row.washed_down), row.hygiene_note, row.called_off_because),
        )
        for row in rows
    ]
    headings = (
        *("Visit key", "Reason", "State", "Asked by", "Asked on", "Not before", "Late after"),
        *("Cows expected", "Day", "Begun", "Finished", "Note", "Signed by", "Done, as told"),
        *("The farm's to do, as told", "Washed down", "Hygiene", "Called off because"),
    )
    return DataTable("visits", "Each visit, from the wish to the finish.", headings, found)


def _asked(scope: Scope, farm: Farm) -> DataTable:
    rows = AskedCow.objects.within(scope).filter(visit__farm=farm).select_related("cow").order_by("pk")
    found = [
        (
            *(row.visit_id, row.cow_id, row.cow.number, row.why),
            MobilityScale(row.mobility_scale).label if row.mobility_scale else "",
            *(row.mobility_score, row.lame_since),
        )
        for row in rows
    ]
    headings = ("Visit key", "Cow key", "Cow", "Why", "Score sheet", "Mobility score", "Lame since")
    return DataTable("cows asked for", "Cows that the farm named for a visit.", headings, found)


def _messages(scope: Scope, farm: Farm, zone: ZoneInfo) -> DataTable:
    visits = Visit.objects.within(scope).filter(farm=farm).order_by("due_from", "pk").in_bulk()
    found = [
        (
            *(
                line.message.visit_id,
                local_day(line.message.made_at, zone),
                _clock(line.message.made_at, zone),
            ),
            *(line.kind.label, line.way, _day(line.message.hour, zone), _clock(line.message.hour, zone)),
            line.look.words if line.look else "",
        )
        for lines in told_lines(scope, visits.values()).values()
        for line in lines
    ]
    headings = (
        "Visit key",
        "Told on",
        "At",
        "Message",
        "How and to whom",
        "Of the day",
        "Hour",
        "What became of it",
    )
    return DataTable("messages", "What the farm was told of its visits by itself.", headings, found)


def _wash_downs(scope: Scope, farm: Farm, zone: ZoneInfo) -> DataTable:
    rows = WashDown.objects.within(scope).filter(visit__farm=farm).select_related("by")
    found = [
        (
            *(row.visit_id, local_day(row.washed_at, zone), _clock(row.washed_at, zone)),
            *(row.substance, row.dilution, row.contact_minutes, row.by.name),
        )
        for row in rows.order_by("washed_at", "pk")
    ]
    headings = ("Visit key", "Day", "Time", "Disinfectant", "How strong", "Minutes left on", "By")
    return DataTable("wash-downs", "Crush, knives and boots washed and disinfected.", headings, found)


def _blocks(scope: Scope, farm: Farm) -> DataTable:
    rows = Block.objects.within(scope).filter(cow__farm=farm, put_on_by__taken_back_at__isnull=True)
    found = [
        (
            *(row.put_on_by_id, row.cow_id, row.cow.number, Foot(row.foot).label, Claw(row.claw).label),
            *(BlockKind(row.kind).label, row.put_on, row.off_due, row.off_on),
        )
        for row in rows.select_related("cow").order_by("put_on", "pk")
    ]
    headings = (*("Trim key", "Cow key", "Cow", "Foot", "Claw", "Block", "Put on", "To be off by", "Off on"),)
    return DataTable("blocks", "Each block, until it came off.", headings, found)


def _rechecks(scope: Scope, farm: Farm) -> DataTable:
    rows = Recheck.objects.within(scope).filter(farm=farm, from_trim__taken_back_at__isnull=True)
    found = [
        (
            *(row.from_trim_id, row.cow_id, row.cow.number, Foot(row.foot).label),
            *(RecheckCause(row.cause).label, row.what, row.due_from, row.due_until),
            *(row.closed_on, row.closed_because),
        )
        for row in rows.select_related("cow").order_by("due_from", "pk")
    ]
    headings = (
        *("Trim key", "Cow key", "Cow", "Foot", "Cause", "What", "Due from", "Due until"),
        *("Closed on", "Closed because"),
    )
    return DataTable("re-checks", "Each foot that was to be looked at again.", headings, found)


def _day(at: datetime | None, zone: ZoneInfo) -> date | None:
    return local_day(at, zone) if at else None


def _clock(at: datetime | None, zone: ZoneInfo) -> str:
    return f"{at.astimezone(zone):%H:%M}" if at else ""
