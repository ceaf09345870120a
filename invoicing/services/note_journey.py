"""A drive for the business that no visit tells of is put into the mileage log by hand."""

from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal

from django.db import transaction
from django.db.models import Max

from invoicing.domain.travel_charge import DistanceUnit
from invoicing.models import Journey
from invoicing.services.lock_period import refuse_locked
from trimops.accounts.models import Business, User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.kernel.money import round_money
from trimops.kernel.scope import Scope
from visits.models import Van

FURTHEST = 3000
BY_HAND = "put in by hand"


class JourneyRefused(RuleBroken):
    """The drive cannot be kept as it is; the message says what to mend."""

    code = "journey_refused"


@dataclass(frozen=True)
class JourneyWord:
    """A drive as somebody tells it, in whole tenths of its unit."""

    on: date
    from_words: str
    to_words: str
    purpose: str
    distance: Decimal
    unit: DistanceUnit
    van: Van | None = None


@transaction.atomic
def note_journey(*, business: Business, word: JourneyWord, at: datetime, by: User) -> Journey:
    """Keep the drive, after the others of its day. JourneyRefused, PeriodLocked for a day that is closed."""
    scope = Scope(business.pk)
    if word.on > local_day(at, business.zone):
        raise JourneyRefused("That day lies ahead: a drive is noted once it was driven.")
    refuse_odd_distance(word.distance)
    refuse_locked(scope=scope, day=word.on, what="The day of the drive")
    rows = Journey.objects.within(scope).filter(on=word.on, van=word.van)
    last: int = rows.aggregate(last=Max("position"))["last"] or 0
    row = Journey(business=business, on=word.on, position=last + 1, van=word.van, is_by_hand=True)
    row.from_words, row.to_words, row.purpose = word.from_words, word.to_words, word.purpose
    row.distance, row.unit, row.source = word.distance, word.unit.value, BY_HAND
    row.noted_at, row.noted_by = at, by
    row.full_clean()
    row.save()
    return row


def refuse_odd_distance(distance: Decimal) -> None:
    """JourneyRefused for what no van drives in one go, or finer than a tenth."""
    if not 0 <= distance <= FURTHEST or distance != round_money(distance, 1):
        raise JourneyRefused(
            f"{distance} is no distance of one drive: give it with one decimal, up to {FURTHEST}."
        )
