"""The rounds of mobility scoring of a farm, the latest first."""

from dataclasses import dataclass

from farms.models import Farm
from visits.domain.mobility import MobilityScale, is_lame
from visits.models import MobilityScore, MobilityScoring


@dataclass(frozen=True)
class ScoringRound:
    """`lame` of the `scored` cows, by the scale of the round; `numbers` are those of the lame ones, worst first."""

    row: MobilityScoring
    scored: int
    lame: int
    numbers: tuple[str, ...]


def scoring_rounds(farm: Farm, most: int = 6) -> list[ScoringRound]:
    """Two queries."""
    rows = MobilityScoring.objects.within(farm.scope).filter(farm=farm).select_related("noted_by")[:most]
    rounds = {row.pk: row for row in rows}
    scores: dict[int, list[MobilityScore]] = {pk: [] for pk in rounds}
    found = MobilityScore.objects.within(farm.scope).filter(scoring_id__in=list(rounds)).select_related("cow")
    for score in found.order_by("-score", "cow__number", "pk"):
        scores[score.scoring_id].append(score)
    return [_round(row, scores[pk]) for pk, row in rounds.items()]


def _round(row: MobilityScoring, scores: list[MobilityScore]) -> ScoringRound:
    scale = MobilityScale(row.scale)
    lame = [score.cow.number for score in scores if is_lame(scale, score.score)]
    return ScoringRound(row, len(scores), len(lame), tuple(lame))
