"""What a house has to do with the world outside."""

from tests.factories import NOON, House
from tests.trimops.outbox.webhooks import make_webhook
from visits.models import OutsideCalendar


def outside_of(house: House) -> dict[str, object]:
    """A web address that is told of events, and a calendar that nobody has read yet."""
    calendar = OutsideCalendar.objects.create(
        business=house.business,
        van=house.van,
        name="My calendar",
        url="https://calendar.example/me.ics",
        made_at=NOON,
        made_by=house.trimmer,
    )
    return {"webhook": make_webhook(house).pk, "outside_calendar": calendar.pk}
