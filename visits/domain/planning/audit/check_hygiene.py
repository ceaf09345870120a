"""Rule 4: along a shift no herd is seen after one with a higher hygiene number."""

from collections.abc import Iterator
from itertools import pairwise

from visits.domain.planning.audit.runs import Run
from visits.domain.planning.audit.week import Week


def check_hygiene(week: Week, run: Run) -> Iterator[str]:
    """The breaches of rule 4 in one run. Falls between neighbours are all falls there are."""
    for before, after in pairwise(run.calls):
        was, now = week.hygiene[before.job.site], week.hygiene[after.job.site]
        if now < was:
            yield f"{after.path}.job: hygiene {now} comes after {before.job.id} with {was}"
