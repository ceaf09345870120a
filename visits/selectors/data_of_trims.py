"""The tables of what was seen and done at the crush. A cow that was taken back is in none of them."""

from datetime import datetime
from zoneinfo import ZoneInfo

from farms.models import Farm
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.documents.data_table import Cell, DataTable, yes_no
from visits.domain.actions import ActionKind, BlockKind, TrimKind
from visits.domain.cow_entry_json import FOOT_MEASURES
from visits.domain.crush_entry import SIGNS
from visits.domain.feet import Claw, Foot, zone_name
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale
from visits.models import ClawAction, Finding, Referral, Trim, TrimmedFoot

COW = ("Trim key", "Cow key", "Cow", "Day")
STANDS = "trimmed_foot__trim__taken_back_at__isnull"
OF_FARM = "trimmed_foot__trim__visit__farm"
CowCells = tuple[Cell, Cell, Cell, Cell]
SIGN_WORDS = (
    *("Pain to the hoof testers", "Swelling", "Swelling above the dew claws", "Bad smell"),
    *("Blood drawn", "Sensitive tissue open", "Looks deep", "No better at re-check"),
)


def trim_tables(scope: Scope, farm: Farm, zone: ZoneInfo) -> list[DataTable]:
    """Trims, feet, findings, actions and what was left to the vet. Five queries."""
    return [
        _trims(scope, farm, zone),
        _feet(scope, farm, zone),
        _findings(scope, farm, zone),
        _actions(scope, farm, zone),
        _for_vet(scope, farm, zone),
    ]


def _trims(scope: Scope, farm: Farm, zone: ZoneInfo) -> DataTable:
    rows = Trim.objects.within(scope).filter(visit__farm=farm).select_related("cow", "recorded_by")
    found = [
        (
            *_of(row, zone),
            f"{row.recorded_at.astimezone(zone):%H:%M}",
            row.visit_id,
            TrimKind(row.kind).label,
            MobilityScale(row.mobility_scale).label if row.mobility_scale else "",
            *(row.mobility_score, row.belly_band_minutes, row.crush_seconds),
            *(row.for_vet, row.told_vet, row.note, row.recorded_by.name),
        )
        for row in rows.order_by("recorded_at", "pk")
    ]
    headings = (
        *(*COW, "Time", "Visit key", "Kind", "Score sheet", "Mobility score", "Minutes in the belly band"),
        *("Seconds in the crush", "Left to the vet", "Vet told", "Note", "Trimmer"),
    )
    return DataTable("trims", "Each cow at the crush, once a visit.", headings, found)


def _feet(scope: Scope, farm: Farm, zone: ZoneInfo) -> DataTable:
    rows = TrimmedFoot.objects.within(scope).filter(trim__visit__farm=farm, trim__taken_back_at__isnull=True)
    told = rows.order_by("trim__recorded_at", "pk").values_list(
        *_columns("trim"), "foot", *FOOT_MEASURES, *SIGNS
    )
    after_measures = 5 + len(FOOT_MEASURES)
    found = [
        (
            *_cow(zone, *row[:4]),
            Foot(row[4]).label,
            *row[5 : after_measures - 1],
            *(yes_no(sign) for sign in row[after_measures:]),
            row[after_measures - 1],
        )
        for row in told
    ]
    headings = (
        *(*COW, "Foot", "Front wall, mm", "Measured from", "Toe angle, degrees"),
        *("Look again after days (0: no need)", *SIGN_WORDS, "Left to the vet"),
    )
    return DataTable("feet", "Each foot that was lifted.", headings, found)


def _findings(scope: Scope, farm: Farm, zone: ZoneInfo) -> DataTable:
    rows = Finding.objects.within(scope).filter(**{STANDS: True, OF_FARM: farm})
    told = rows.order_by("trimmed_foot__trim__recorded_at", "pk").values_list(
        *_columns("trimmed_foot__trim"),
        *("trimmed_foot__foot", "claw", "lesion", "zone", "zone_map", "severity", "dd_stage"),
    )
    found = [
        (
            *_cow(zone, *row[:4]),
            *(Foot(foot).label, Claw(claw).label, lesion, LesionCode(lesion).label, place),
            "" if place is None else zone_name(place),
            *(zone_map, severity, stage, DDStage(stage).label if stage else ""),
        )
        for row in told
        for foot, claw, lesion, place, zone_map, severity, stage in [row[4:]]
    ]
    headings = (
        *(*COW, "Foot", "Claw", "Code of the ICAR claw health atlas", "Lesion seen", "Zone", "Place"),
        *("Map of the zone", "How bad, 1 to 3", "Stage of digital dermatitis", "Stage in words"),
    )
    about = "Each lesion seen at a trim; none is a veterinary diagnosis."
    return DataTable("findings", about, headings, found)


def _actions(scope: Scope, farm: Farm, zone: ZoneInfo) -> DataTable:
    rows = ClawAction.objects.within(scope).filter(**{STANDS: True, OF_FARM: farm})
    told = rows.order_by("trimmed_foot__trim__recorded_at", "pk").values_list(
        *_columns("trimmed_foot__trim"), *("trimmed_foot__foot", "claw", "kind", "block_kind")
    )
    found = [
        (
            *_cow(zone, *row[:4]),
            *(Foot(foot).label, Claw(claw).label if claw else "", ActionKind(kind).label),
            BlockKind(block).label if block else "",
        )
        for row in told
        for foot, claw, kind, block in [row[4:]]
    ]
    return DataTable("actions", "Each thing that was done.", (*COW, "Foot", "Claw", "Done", "With"), found)


def _for_vet(scope: Scope, farm: Farm, zone: ZoneInfo) -> DataTable:
    rows = Referral.objects.within(scope).filter(trim__visit__farm=farm, trim__taken_back_at__isnull=True)
    found = [
        (
            *_of(row.trim, zone),
            Foot(row.foot).label if row.foot else "",
            *(row.reason, row.told_whom, local_day(row.told_at, zone) if row.told_at else None),
        )
        for row in rows.select_related("trim__cow").order_by("trim__recorded_at", "pk")
    ]
    headings = (*COW, "Foot", "What was seen", "Who was told", "Told on")
    return DataTable("for the vet", "What was left to the vet.", headings, found)


def _of(trim: Trim, zone: ZoneInfo) -> CowCells:
    return trim.pk, trim.cow_id, trim.cow.number, local_day(trim.recorded_at, zone)


def _columns(trim: str) -> tuple[str, str, str, str]:
    """What `_cow` tells, reached through `trim`. Rows by the ten thousand are read as values: a model is slow."""
    return f"{trim}_id", f"{trim}__cow_id", f"{trim}__cow__number", f"{trim}__recorded_at"


def _cow(zone: ZoneInfo, trim: int, cow: int, number: str, at: datetime) -> CowCells:
    return trim, cow, number, local_day(at, zone)
