"""What asking for so many cows comes to: how many come, how many turn out lame, how many blocks go on.

Each share of a farm is drawn towards the business's (`shrunk_shares.py`); the business's starts from a usual figure
worth a few cows. Usual (nothing was seen): every cow comes, a cow named as lame or re-checked is one, no other is lame
and no block is counted apart, so that the length is that of the planning figures.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from visits.domain.visit_lengths.finished_visit import Asked, FinishedVisit, Work
from visits.domain.visit_lengths.shrunk_shares import ShrunkShares, shrink_shares

TURN_OUT_WORTH, NAMED_WORTH, REST_WORTH = 60.0, 20.0, 20.0
LEAST_TURN_OUT, MOST_TURN_OUT = 0.5, 1.5


@dataclass(frozen=True)
class NamedShares:
    """Of the cows named as lame or to be re-checked: how many were trimmed for it, and how many only looked at."""

    corrective: float = 1.0
    check: float = 0.0


@dataclass(frozen=True)
class FarmShares:
    """Of one farm: its share of lame cows among those not named."""

    rest_corrective: float


@dataclass(frozen=True)
class WorkShares:
    """`turn_out`: cows done for each one asked. `blocks`: for each lame cow. `farms` differ from `rest_corrective`."""

    turn_out: float = 1.0
    named: NamedShares = NamedShares()
    rest_corrective: float = 0.0
    rest_check: float = 0.0
    blocks: float = 0.0
    farms: Mapping[int, FarmShares] | None = None

    def rest_at(self, farm: int) -> float:
        """The share of lame cows among those not named, at that farm."""
        known = (self.farms or {}).get(farm)
        return self.rest_corrective if known is None else known.rest_corrective


@dataclass(frozen=True)
class WorkAhead:
    """The work to be expected, and the variance of the number of lame cows in it."""

    work: Work
    corrective_variance: float


def work_ahead(shares: WorkShares, asked: Asked) -> WorkAhead:
    """What the asked visit comes to, before it is made. ValueError on impossible counts."""
    if not 0 <= asked.corrective_count <= asked.head_count:
        raise ValueError(f"{asked.corrective_count} lame or re-checked of {asked.head_count} cows cannot be")
    named = asked.corrective_count * shares.turn_out
    rest = (asked.head_count - asked.corrective_count) * shares.turn_out
    share = min(shares.rest_at(asked.farm), 1 - shares.rest_check)
    corrective = named * shares.named.corrective + rest * share
    check = named * shares.named.check + rest * shares.rest_check
    work = Work(named + rest - corrective - check, corrective, check, corrective * shares.blocks)
    spread = named * shares.named.corrective * (1 - shares.named.corrective) + rest * share * (1 - share)
    return WorkAhead(work, spread)


def learn_shares(visits: Sequence[FinishedVisit]) -> WorkShares:
    """From what was asked and what was done. Where nothing was seen, the usual shares."""
    asked = sum(visit.asked.head_count for visit in visits)
    turn_out = (sum(visit.work.cows for visit in visits) + TURN_OUT_WORTH) / (asked + TURN_OUT_WORTH)
    turn_out = min(max(turn_out, LEAST_TURN_OUT), MOST_TURN_OUT)
    named = _named(visits)
    rest = _rest(visits, named, turn_out)
    lame = sum(visit.work.corrective for visit in visits)
    return WorkShares(
        turn_out=turn_out,
        named=named,
        rest_corrective=rest.overall,
        rest_check=_rest_check(visits, named, turn_out),
        blocks=sum(visit.work.blocks for visit in visits) / (lame + REST_WORTH),
        farms={
            farm: FarmShares(share) for farm, share in zip(sorted(_farms(visits)), rest.shares, strict=True)
        },
    )


def _named(visits: Sequence[FinishedVisit]) -> NamedShares:
    """From the visits on which every cow was named."""
    works = [v.work for v in visits if v.asked.corrective_count == v.asked.head_count]
    cows = sum(work.cows for work in works) + NAMED_WORTH
    corrective = (sum(work.corrective for work in works) + NAMED_WORTH) / cows
    return NamedShares(corrective, sum(work.check for work in works) / cows)


def _rest(visits: Sequence[FinishedVisit], named: NamedShares, turn_out: float) -> ShrunkShares:
    farms = _farms(visits)
    counted = [_lame_and_rest(farms[farm], named, turn_out) for farm in sorted(farms)]
    lame, cows = [pair[0] for pair in counted], [pair[1] for pair in counted]
    return shrink_shares(lame, cows, usual=0.0, worth=REST_WORTH)


def _lame_and_rest(
    visits: Sequence[FinishedVisit], named: NamedShares, turn_out: float
) -> tuple[float, float]:
    known = sum(visit.asked.corrective_count for visit in visits) * turn_out
    rest = max(0.0, sum(visit.work.cows for visit in visits) - known)
    lame = sum(visit.work.corrective for visit in visits) - known * named.corrective
    return min(max(0.0, lame), rest), rest


def _rest_check(visits: Sequence[FinishedVisit], named: NamedShares, turn_out: float) -> float:
    known = sum(visit.asked.corrective_count for visit in visits) * turn_out
    rest = max(0.0, sum(visit.work.cows for visit in visits) - known)
    looked_at = sum(visit.work.check for visit in visits) - known * named.check
    return min(max(0.0, looked_at), rest) / (rest + REST_WORTH)


def _farms(visits: Sequence[FinishedVisit]) -> dict[int, list[FinishedVisit]]:
    found: dict[int, list[FinishedVisit]] = {}
    for visit in visits:
        found.setdefault(visit.asked.farm, []).append(visit)
    return found
