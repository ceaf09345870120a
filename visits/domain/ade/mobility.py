"""Mobility scores, as diagnosis events with the score in `severityScore` and the score sheet as the code's scheme.

The exchange's own place for how a cow walks is a conformation score of the trait Locomotion, from 1 to 9 or 50 to 99,
where a high score walks well. A score of 0 to 3 or 1 to 5, where a high one walks badly, would be read there as its
contrary, and 0 has no place at all; so no score is sent as one.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime

from visits.domain.ade.envelope import animal_event
from visits.domain.ade.herd_out import CowOut, HerdOut
from visits.domain.ade.identifiers import score_sheet_id
from visits.domain.ade.lists import JsonObject
from visits.domain.ade.moments import NOON
from visits.domain.mobility import MobilityScale

NO_DIAGNOSIS = "a score by eye, not a veterinary diagnosis; not the 1 to 9 conformation score"


@dataclass(frozen=True)
class KnownScore:
    """A score with the instant it is told by: of a round behind the herd only the day is known."""

    cow: int
    at: datetime
    scale: MobilityScale
    score: int
    key: str


def scores_of(herd: HerdOut) -> list[KnownScore]:
    """Those of the rounds and those noted at the crush, in order of time."""
    walked = [
        KnownScore(
            row.cow,
            datetime.combine(row.day, NOON, tzinfo=UTC),
            row.scale,
            row.score,
            f"score-{row.key}",
        )
        for row in herd.scores
    ]
    noted = [
        KnownScore(trim.cow, trim.at, scale, score, f"walked-in-{trim.key}")
        for trim in herd.trims
        if (scale := trim.entry.mobility_scale) is not None
        and (score := trim.entry.mobility_score) is not None
    ]
    return sorted([*walked, *noted], key=lambda score: (score.at, score.key))


def scores_told(herd: HerdOut, cows: dict[int, CowOut]) -> Iterator[JsonObject]:
    """Every score, the good ones too: a share needs them."""
    for known in scores_of(herd):
        head = animal_event("DiagnosisEvent", known.key, herd.farm, cows[known.cow], known.at, known.key)
        yield {
            **head,
            "remark": NO_DIAGNOSIS,
            "diagnoses": [
                {
                    "id": f"{known.key}-a",
                    "name": f"Mobility score, {known.scale.label}",
                    "diagnosisCode": dict(score_sheet_id(known.scale)),
                    "severityScore": known.score,
                }
            ],
        }
