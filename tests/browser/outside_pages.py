"""The pages about other programs and calendars outside."""

from collections.abc import Iterator
from datetime import timedelta

from django.urls import reverse
from django.utils import timezone

from tests.factories import House
from tests.trimops.outbox.webhooks import make_webhook
from visits.models import OutsideBusy, OutsideCalendar


def outside_pages(house: House) -> Iterator[str]:
    """With an address that was told something, and a calendar that could not be read the last time."""
    make_webhook(
        house,
        "https://books.example/a/rather/long/address/of/a/hook/that/must/break/somewhere?key=1234567890",
    )
    yield reverse("webhooks")
    now = timezone.now()
    calendar = OutsideCalendar.objects.create(
        business=house.business,
        van=house.van,
        name="My calendar",
        url="https://calendar.example/me.ics",
        made_at=now,
        made_by=house.trimmer,
        keeps_titles=True,
        asked_at=now,
        fetched_at=now - timedelta(days=1),
        read_until=(now + timedelta(days=127)).date(),
        last_words="the other side answered with 503",
        left_out=1,
    )
    for days, is_all_day, summary in ((1, False, "Dentist"), (4, True, "Away with the family")):
        start = now + timedelta(days=days)
        OutsideBusy.objects.create(
            business=house.business,
            calendar=calendar,
            starts=start,
            ends=start + timedelta(hours=72 if is_all_day else 2),
            is_all_day=is_all_day,
            summary=summary,
        )
    yield from (reverse("van_calendars", args=[house.van.pk]), reverse("vans"), reverse("this_week"))
