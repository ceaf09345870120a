"""All that a calendar address shows, read in one statement as the text of what is shown.

The address is looked up by its secret, and beside it stand, as JSON, the rows that it shows. So a feed is made of the
very values that its tag is the hash of, the tag cannot miss a change, whoever made it and by whatever way, and a reader
who has the newest feed costs one query and no row becomes an object.
"""

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta

from django.db.models import (
    BigIntegerField,
    BooleanField,
    Exists,
    ExpressionWrapper,
    F,
    Model,
    OuterRef,
    Q,
    QuerySet,
    Subquery,
)
from django.db.models.functions import Coalesce

from farms.models import FarmAccess
from trimops.accounts.models import Membership
from trimops.accounts.roles import Role
from trimops.kernel.secret_link import hash_of
from trimops.tenancy.unscoped import unscoped
from visits.domain.visit_states import VisitState
from visits.models import CalendarAddress, DayOff, VanOut, Visit
from visits.selectors.rows_as_text import OneRow, RowsAsText

PAST_DAYS, COMING_DAYS = 28, 120
VISIT = (
    *("uid", "state", "reason", "head_count", "expected_minutes", "calendar_sequence", "changed_at"),
    *("planned_start", "planned_finish", "last_start", "last_finish", "due_until"),
    *("van__name", "van__trimmer__name", "van__shown_since"),
    *("farm__name", "farm__address", "farm__access_notes", "farm__latitude", "farm__longitude"),
    *("farm__place_sequence", "farm__shown_since"),
)
DAY_OFF = ("id", "van__name", "van__shown_since", "noted_at", "day", "reason")
VAN_OUT = (
    *("id", "van__name", "van__shown_since", "noted_at", "because", "since", "until", "calendar_sequence"),
)

SHOWN = ("shown_visits", "shown_days_off", "shown_outs")


@dataclass(frozen=True)
class CalendarRows:
    """An open address and what it shows, each as the text of a JSON array of rows."""

    address: CalendarAddress
    visits: str
    days_off: str
    outs: str


def calendar_rows(secret: str, now: datetime) -> CalendarRows | None:
    """What lies behind the secret; None for one that is unknown, closed or whose maker has left. One query.

    The window goes by whole days in UTC, so what it shows changes only with the plan and at midnight.
    """
    day = now.astimezone(UTC).date()
    with unscoped("the secret alone says whose calendar it is"):
        rows = CalendarAddress.objects.filter(
            _may_be_read(), secret_hash=hash_of(secret), revoked_at__isnull=True
        )
        rows = rows.select_related("business", "van", "farm", "trimmer").annotate(
            shown_visits=_as_text(_visits(day), VISIT),
            shown_days_off=_as_text(
                _stays(DayOff, Q(day__gte=_first(day).date(), day__lt=_last(day).date())), DAY_OFF
            ),
            shown_outs=_as_text(_stays(VanOut, Q(until__gte=_first(day), since__lt=_last(day))), VAN_OUT),
        )
        address = rows.first()
    if address is None:
        return None
    return CalendarRows(address, *(str(getattr(address, name) or "[]") for name in SHOWN))


def _first(day: date) -> datetime:
    return datetime.combine(day - timedelta(days=PAST_DAYS), time(0), UTC)


def _last(day: date) -> datetime:
    return datetime.combine(day + timedelta(days=COMING_DAYS), time(0), UTC)


def _as_text(rows: QuerySet[Model], fields: tuple[str, ...]) -> Subquery:
    return Subquery(rows.order_by().values(text=RowsAsText(OneRow(*fields), F("pk"))))


def _may_be_read() -> Q:
    """A farm's address lives no longer than its maker's place there; the business closes its own by hand."""
    places = Membership.objects.filter(
        business_id=OuterRef("business_id"),
        user_id=OuterRef("made_by_id"),
        joined_at__isnull=False,
        ended_at__isnull=True,
    )
    accesses = FarmAccess.objects.filter(
        business_id=OuterRef("business_id"),
        farm_id=OuterRef("farm_id"),
        membership__user_id=OuterRef("made_by_id"),
        membership__joined_at__isnull=False,
        membership__ended_at__isnull=True,
    )
    staff = Exists(places.exclude(role=Role.FARM))
    return Q(farm__isnull=True) | Q(Q(staff) | Q(Exists(accesses)), farm__is_active=True)


def _visits(day: date) -> QuerySet[Visit]:
    """Those with an hour; called off ones and such as lost their hour for as long as calendars need to hear of it;
    and, where the address wants them, those without an hour by their last day."""
    first, last = _first(day), _last(day)
    rows = Visit.objects.filter(business_id=OuterRef("business_id")).annotate(
        whose_van=Coalesce("van_id", "last_van_id", 0),
        whose_trimmer=Coalesce("van__trimmer_id", "last_van__trimmer_id", 0),
        # because: an empty column of the address stands for every van, trimmer, farm
        wants_wishes=ExpressionWrapper(OuterRef("shows_wishes"), output_field=BooleanField()),
    )
    has_hour = Q(planned_start__gte=first, planned_start__lt=last)
    is_off = Q(state=VisitState.CALLED_OFF) | Q(planned_start__isnull=True)
    went_off = is_off & Q(last_start__isnull=False) & Q(Q(changed_at__gte=first) | Q(last_start__gte=first))
    mine = Q(
        whose_van=Coalesce(OuterRef("van_id"), F("whose_van")),
        whose_trimmer=Coalesce(OuterRef("trimmer_id"), F("whose_trimmer")),
    )
    is_wish = Q(state=VisitState.WANTED, wants_wishes=True)
    is_wish &= Q(due_until__gte=first.date(), due_until__lt=last.date())
    rows = rows.filter(farm_id=Coalesce(OuterRef("farm_id"), F("farm_id")))
    return rows.filter((mine & (has_hour | went_off)) | is_wish)


def _stays(model: type[DayOff] | type[VanOut], within: Q) -> QuerySet[Model]:
    """When the address's vans stay in; a farm is not told."""
    rows = model.objects.filter(within, business_id=OuterRef("business_id"))
    rows = rows.filter(van_id=Coalesce(OuterRef("van_id"), F("van_id")))
    rows = rows.filter(van__trimmer_id=Coalesce(OuterRef("trimmer_id"), F("van__trimmer_id")))
    return rows.annotate(farm_asked=Coalesce(OuterRef("farm_id"), 0, output_field=BigIntegerField())).filter(
        farm_asked=0
    )


def instant(text: str) -> datetime:
    """The aware instant that a database wrote as text: SQLite in UTC without saying so, PostgreSQL with its offset."""
    at = datetime.fromisoformat(text)
    return at if at.tzinfo else at.replace(tzinfo=UTC)


def newest(*texts: str | None) -> datetime:
    """The latest of the instants that there are."""
    return max(instant(text) for text in texts if text)
