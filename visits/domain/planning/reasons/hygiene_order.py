"""Whom a stop must come after or before because of hygiene, and what that order costs."""

from collections.abc import Iterator

from visits.domain.planning.reasons.reason import Figure, Reason
from visits.domain.planning.reasons.standing import PENNY_PART, Standing


def hygiene_order(standing: Standing) -> Iterator[Reason]:
    """The nearest cleaner herd before it and the nearest worse one after it, on the same shift.

    `money` is what the best other place on this shift would save if hygiene did not count; 0 where it would not.
    """
    jobs = standing.board.problem.jobs
    own = jobs[standing.job].hygiene
    before = [job for job in standing.order[: standing.at] if jobs[job].hygiene < own]
    after = [job for job in standing.order[standing.at + 1 :] if jobs[job].hygiene > own]
    if not before and not after:
        return
    figures: dict[str, Figure] = {"level": own, "money": round(_cost_of_order(standing), 2)}
    if before:
        figures |= {"after": jobs[before[-1]].id, "after_level": jobs[before[-1]].hygiene}
    if after:
        figures |= {"before": jobs[after[0]].id, "before_level": jobs[after[0]].hygiene}
    yield Reason("hygiene", figures)


def _cost_of_order(standing: Standing) -> float:
    free, rest = standing.board.of_one_level, standing.rest
    tries = [(*rest[:at], standing.job, *rest[at:]) for at in range(len(rest) + 1)]
    saved = free.cost(standing.shift, standing.order) - min(free.cost(standing.shift, each) for each in tries)
    return saved if saved > PENNY_PART else 0.0
