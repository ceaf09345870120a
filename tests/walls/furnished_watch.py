"""A row of each kind of the watch over lone work, for the addresses that name one."""

from tests.factories import NOON, House
from visits.models import LoneWatch, Visit, WatchContact


def watch_of(house: House, visit_pk: object) -> dict[str, object]:
    """Key of the ring -> primary key. The watch is off and over, so that no page asks anybody."""
    visit = Visit.objects.within(house.scope).get(pk=visit_pk)
    watch = LoneWatch.objects.create(
        business=house.business,
        visit=visit,
        trimmer=house.trimmer,
        began_at=NOON,
        expected_finish=NOON,
        state="ended",
        ended_at=NOON,
        ended_how="well",
    )
    contact = WatchContact.objects.create(
        business=house.business, name="A. Neighbour", email="n@home.example"
    )
    return {"lone_watch": watch.pk, "watch_contact": contact.pk}
