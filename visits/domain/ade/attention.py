"""Cows that want attention now: lame by their latest score, and not at the crush since."""

from collections.abc import Iterator

from visits.domain.ade.envelope import animal_event
from visits.domain.ade.herd_out import CowOut, HerdOut
from visits.domain.ade.lists import JsonObject
from visits.domain.ade.mobility import KnownScore, scores_of
from visits.domain.mobility import Urgency, urgency_of

_PRIORITY = {Urgency.SOON: "Normal", Urgency.SAME_DAY: "Urgent"}


def wanting_attention(herd: HerdOut, cows: dict[int, CowOut]) -> Iterator[JsonObject]:
    """One event a cow that is on the farm, by her latest score; an older one says nothing of today."""
    latest: dict[int, KnownScore] = {known.cow: known for known in scores_of(herd)}
    trimmed = {trim.cow: trim.at.date() for trim in herd.trims}
    for key, known in latest.items():
        priority = _PRIORITY.get(urgency_of(known.scale, known.score))
        seen_since = key in trimmed and trimmed[key] >= known.at.date()
        if priority is None or seen_since or not cows[key].status.is_on_farm:
            continue
        head = animal_event(
            "AttentionEvent", f"attention-{known.key}", herd.farm, cows[key], known.at, known.key
        )
        yield {
            **head,
            "remark": f"scored {known.score} ({known.scale.label})",
            "category": "Health",
            "causes": ["MobilityScore", "Lameness"],
            "priority": priority,
        }
