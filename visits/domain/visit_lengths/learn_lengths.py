"""Learn the length of a visit from a business's own finished visits.

Method. Minutes of a visit are a sum: its parts (setting up, packing up, washing down, cows by kind of trim, blocks,
what the yard lacks) times what each takes here, plus what its van takes more or less per cow, plus what its farm
takes more or less per visit and per cow, plus noise that grows with the length. The parts start from the business's
own figures over the published pace (`length_parts.py`), vans and farms from nothing; every part is drawn towards
where it starts by as much as the history leaves open (empirical Bayes: `mixed_rows.py`, `variance_steps.py`). So a
new business goes by the published pace, a new farm by the business's mean, and a farm known for years by its own.
Before a visit nobody knows how many cows will be lame: what was asked is turned into work by the farm's shares
(`work_shares.py`).

The shape of the errors and what the visits of one day have in common come from visits kept aside: each third of the
days is told, from what was asked, by what the other two thirds taught. How well it did is said of the newest fifth,
told by what was learned from the others. Finishes forgotten for hours hardly weigh (`variance_steps.py`).
"""

from collections.abc import Sequence
from dataclasses import dataclass

from visits.domain.visit_length import LengthFigures, expected_length
from visits.domain.visit_lengths.finished_visit import FinishedVisit, usable
from visits.domain.visit_lengths.learned_rule import (
    FARM_PACE,
    FARM_STAY,
    FREEDOM,
    USUAL_SCALE,
    FarmLearned,
    LearnedRule,
    likely_length,
    with_shape,
)
from visits.domain.visit_lengths.length_parts import Vans, columns_of, prior_of
from visits.domain.visit_lengths.mixed_rows import MixedRow
from visits.domain.visit_lengths.spread_shape import SpreadShape, shape_of
from visits.domain.visit_lengths.variance_steps import FitWay, Guess, fit_mixed
from visits.domain.visit_lengths.work_shares import learn_shares

FEWEST_VISITS = 15
"""Below this the planning figures are gone by (common practice, no source)."""
KEPT_ASIDE, FOLDS = 0.2, 3
FARMS_WORTH, VISITS_WORTH = 4.0, 10.0
USUAL_DAY_SHARE, DAYS_WORTH = 0.2, 30.0
WAY = FitWay(
    groups=(Guess(FARM_STAY**2, FARMS_WORTH), Guess(FARM_PACE**2, FARMS_WORTH)),
    noise=Guess(USUAL_SCALE, VISITS_WORTH),
    freedom=FREEDOM,
)


@dataclass(frozen=True)
class HeldOut:
    """How the learned rule did on visits kept aside. Errors are mean absolute minutes.

    `flat` is the flat rule: minutes per cow of the same history, times the cows. `figures` are the planning figures.
    `kept` is the share of visits within their four-in-five span.
    """

    visits: int
    error: float
    flat_error: float
    figures_error: float
    kept: float


@dataclass(frozen=True)
class Lesson:
    """What was learned, and how well it did on the visits kept aside."""

    rule: LearnedRule
    held_out: HeldOut


def learn_lengths(visits: Sequence[FinishedVisit], figures: LengthFigures) -> Lesson | None:
    """The rule of all usable visits. None where there are fewer than FEWEST_VISITS."""
    kept = usable(list(visits))
    if len(kept) < FEWEST_VISITS:
        return None
    split = len(kept) - max(3, round(len(kept) * KEPT_ASIDE))
    before, after = kept[:split], kept[split:]
    held_out = hold_out(_learned_from(before, figures), before, after, figures)
    return Lesson(_learned_from(kept, figures), held_out)


def _learned_from(visits: Sequence[FinishedVisit], figures: LengthFigures) -> LearnedRule:
    shape, day_share = _errors_kept_aside(visits, figures)
    return with_shape(fit_rule(visits, figures), shape, day_share)


def _errors_kept_aside(kept: Sequence[FinishedVisit], figures: LengthFigures) -> tuple[SpreadShape, float]:
    visits: list[FinishedVisit] = []
    errors: list[float] = []
    for fold in range(FOLDS):
        aside = [visit for visit in kept if visit.day.toordinal() % FOLDS == fold]
        others = [visit for visit in kept if visit.day.toordinal() % FOLDS != fold]
        if aside and others:
            visits += aside
            errors += errors_of(fit_rule(others, figures), aside)
    return shape_of(errors), common_share(visits, errors)


def hold_out(
    rule: LearnedRule, before: Sequence[FinishedVisit], after: Sequence[FinishedVisit], figures: LengthFigures
) -> HeldOut:
    """How a rule learned from the visits before does on those after."""
    told = [likely_length(rule, visit.asked) for visit in after]
    each = flat_minutes_per_cow(before)
    pairs = list(zip(told, after, strict=True))
    return HeldOut(
        len(after),
        sum(abs(length.minutes - visit.minutes) for length, visit in pairs) / len(after),
        sum(abs(each * visit.asked.head_count - visit.minutes) for visit in after) / len(after),
        sum(abs(_by_figures(visit, figures) - visit.minutes) for visit in after) / len(after),
        sum(length.low <= visit.minutes <= length.high for length, visit in pairs) / len(after),
    )


def flat_minutes_per_cow(visits: Sequence[FinishedVisit]) -> float:
    """The flat rule's one figure: all minutes through all cows asked for."""
    return sum(visit.minutes for visit in visits) / sum(visit.asked.head_count for visit in visits)


def errors_of(rule: LearnedRule, visits: Sequence[FinishedVisit]) -> list[float]:
    """Each visit's error in standard deviations, told from what was asked."""
    told = [likely_length(rule, visit.asked) for visit in visits]
    return [
        (visit.minutes - length.minutes) / length.spread for length, visit in zip(told, visits, strict=True)
    ]


def common_share(visits: Sequence[FinishedVisit], errors: Sequence[float]) -> float:
    """The share of an error's variance that visits of the same day have in common: products of pairs, 0 to 0.8."""
    days: dict[object, list[float]] = {}
    for visit, error in zip(visits, errors, strict=True):
        days.setdefault(visit.day, []).append(min(max(error, -2.5), 2.5))
    products = [a * b for row in days.values() for at, a in enumerate(row) for b in row[at + 1 :]]
    size = sum(error**2 for row in days.values() for error in row) / max(1, len(visits))
    seen = sum(products) / size if size else 0.0
    return min(max((seen + DAYS_WORTH * USUAL_DAY_SHARE) / (len(products) + DAYS_WORTH), 0.0), 0.8)


def _by_figures(visit: FinishedVisit, figures: LengthFigures) -> float:
    asked = visit.asked
    counts = {"head_count": asked.head_count, "corrective_count": asked.corrective_count}
    return expected_length(figures, asked.setup, **counts).minutes


def fit_rule(visits: Sequence[FinishedVisit], figures: LengthFigures) -> LearnedRule:
    """The rule of these visits, its errors taken for normal. ValueError without any."""
    farms = sorted({visit.asked.farm for visit in visits})
    vans = Vans(tuple(sorted({visit.asked.van for visit in visits if visit.asked.van is not None})))
    number = {farm: at for at, farm in enumerate(farms)}
    rows = [_row(visit, vans, number[visit.asked.farm]) for visit in visits]
    fitted = fit_mixed(rows, prior_of(figures, vans), WAY)
    seen = [visit.asked.farm for visit in visits]
    learned = {farm: FarmLearned(seen.count(farm), fitted.solved.groups[at]) for farm, at in number.items()}
    return LearnedRule(
        vans,
        fitted.solved.mean,
        fitted.solved.covariance,
        fitted.variances,
        learn_shares(visits),
        learned,
        len(visits),
    )


def _row(visit: FinishedVisit, vans: Vans, group: int) -> MixedRow:
    work = visit.work
    columns = columns_of(visit.asked.setup, work, vans, visit.asked.van)
    return MixedRow(columns, group, (1.0, work.cows), visit.minutes)
