"""Errands that were tried in vain, in words for people."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime

from trimops.errands.domain.errand_states import ErrandState
from trimops.errands.models import Errand
from trimops.jobs import Job
from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet
from trimops.tenancy.unscoped import unscoped


@dataclass(frozen=True)
class StuckErrand:
    """`what` says what was to be done. `words` are a person's where a rule of the work said no, else `is_fault` and the
    program's own."""

    errand: Errand
    what: str
    words: str
    is_fault: bool
    at: datetime | None
    tries: int


def stuck_rows(scope: Scope) -> TenantQuerySet[Errand]:
    """The business's, the newest first."""
    return Errand.objects.within(scope).filter(state=ErrandState.STUCK.value).order_by("-ended_at", "-pk")


def all_stuck() -> list[Errand]:
    """Of all businesses, the oldest first: for whoever runs the site, who reads no rows of theirs."""
    with unscoped("whoever runs the site must know what got stuck"):
        return list(Errand.objects.filter(state=ErrandState.STUCK.value).order_by("ended_at", "pk"))


def told(errands: Iterable[Errand]) -> Iterator[StuckErrand]:
    """Each in words."""
    for errand in errands:
        yield StuckErrand(
            errand, _what(errand.job), errand.last_words, errand.is_fault, errand.ended_at, errand.tries
        )


def _what(name: str) -> str:
    """A job that an older version left, and that is no more, by its own name."""
    return Job(name).label if name in set(Job) else name
