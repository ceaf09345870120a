"""What got stuck: a refusal in plain words, and a fault in the program's own."""

from collections.abc import Iterator

from django.urls import reverse
from django.utils import timezone

from tests.factories import House
from tests.trimops.errands.errand_hands import written
from trimops.jobs import Job

REFUSED = "There is no price for a block on 3 March 2026: write one, or leave the block unbilled."
FAULT = (
    "OperationalError: connection failed: could not translate host name to address; is the server running?"
)


def stuck_pages(house: House, visit: int) -> Iterator[str]:
    """The list with both, what runs by itself, and the person's own page."""
    ids, over = {"visit_id": visit}, timezone.now()
    written(
        house.business,
        job=Job.DRAFT_INVOICE,
        ids=ids,
        state="stuck",
        tries=1,
        ended_at=over,
        last_words=REFUSED,
    )
    written(
        house.business,
        job=Job.SWEEP_ROADS,
        state="stuck",
        tries=8,
        ended_at=over,
        last_words=FAULT,
        is_fault=True,
    )
    yield from (reverse("stuck"), reverse("own_ways"), reverse("by_itself"))
