"""The scores of a round behind the herd are noted."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date, datetime

from django.db import transaction

from farms.models import Cow, Farm
from farms.services.refuse_erased import refuse_erased
from trimops.accounts.models import User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from visits.domain.mobility import MobilityScale, ScoreOutsideScale, checked_score
from visits.models import MobilityScore, MobilityScoring


class ScoresMakeNoSense(RuleBroken):
    """The message says what to mend; nothing was noted."""

    code = "scores_make_no_sense"


@dataclass(frozen=True)
class CowScore:
    """How one cow, by her key, walks."""

    cow_id: int
    score: int


@dataclass(frozen=True)
class ScoringWord:
    """One round: which day, on which scale, by whom, and of which cows."""

    scored_on: date
    scale: MobilityScale
    scores: Sequence[CowScore] = field(default=())
    scored_by: str = ""
    whole_herd: bool = False


@transaction.atomic
def note_scores(*, farm: Farm, word: ScoringWord, at: datetime, by: User) -> MobilityScoring:
    """Keep the round. Scores of the same day and scale belong to one round: a cow given again has the later score.

    ScoresMakeNoSense for a day to come, a score that the scale does not have, or a cow of another farm.
    """
    refuse_erased(farm=farm)
    _check(farm, word, at)
    rows = MobilityScoring.objects.within(farm.scope).select_for_update()
    row = rows.filter(farm=farm, scored_on=word.scored_on, scale=word.scale.value).first()
    row = row or MobilityScoring(business_id=farm.business_id, farm=farm, scored_on=word.scored_on)
    row.scale, row.noted_at, row.noted_by = word.scale.value, at, by
    row.scored_by = word.scored_by or row.scored_by
    row.whole_herd = word.whole_herd or row.whole_herd
    row.full_clean()
    row.save()
    given = {each.cow_id: each.score for each in word.scores}
    MobilityScore.objects.within(farm.scope).filter(scoring=row, cow_id__in=list(given)).delete()
    MobilityScore.objects.bulk_create(
        MobilityScore(business_id=farm.business_id, scoring=row, cow_id=cow, score=score)
        for cow, score in given.items()
    )
    return row


def _check(farm: Farm, word: ScoringWord, at: datetime) -> None:
    if word.scored_on > local_day(at, farm.business.zone):
        raise ScoresMakeNoSense(
            "The day of the round is still to come: give the day on which they were scored."
        )
    if not word.scores:
        raise ScoresMakeNoSense("No cow was scored: give her number and her score, a cow a line.")
    for each in word.scores:
        try:
            checked_score(word.scale, each.score)
        except ScoreOutsideScale as fault:
            raise ScoresMakeNoSense(f"{fault}.") from fault
    wanted = {each.cow_id for each in word.scores}
    known = Cow.objects.within(farm.scope).filter(farm=farm, pk__in=wanted).count()
    if known != len(wanted):
        raise ScoresMakeNoSense("One of the cows is on another farm.")
