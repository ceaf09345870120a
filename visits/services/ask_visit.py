"""A visit is wanted: by the farm, by the trimmer or by a rule."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date, datetime

from django.db import transaction

from farms.models import Cow, Farm
from farms.services.refuse_erased import refuse_erased
from trimops.accounts.models import User
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.kernel.errors import RuleBroken
from trimops.tenancy.same_business import require_same_business
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import AskedCow, Visit
from visits.selectors.expected_length import expected_at
from visits.selectors.roads_in_use import roads_in_use
from visits.services.visit_change import add_event


class WishMakesNoSense(RuleBroken):
    """What was asked for cannot be."""

    code = "wish_makes_no_sense"


@dataclass(frozen=True)
class CowWish:
    """A cow named for the visit, why, how she walks if known, and since when she is lame as the farm tells it."""

    cow: Cow
    why: str
    mobility_scale: MobilityScale | None = None
    mobility_score: int | None = None
    lame_since: date | None = None


@dataclass(frozen=True)
class VisitWish:
    """What is wanted: why, from whom, between which days, for how many cows (`corrective` of them lame)."""

    reason: VisitReason
    asked_by: str
    due_from: date
    due_until: date
    head_count: int
    corrective_count: int = 0
    mobility_scale: MobilityScale | None = None
    mobility_score: int | None = None
    note: str = ""
    cows: Sequence[CowWish] = field(default=())


@transaction.atomic
def ask_visit(*, farm: Farm, wish: VisitWish, at: datetime, by: User | None) -> Visit:
    """Put a visit on the list of what is wanted. WishMakesNoSense says what to mend."""
    require_same_business(farm, *(wished.cow for wished in wish.cows))
    refuse_erased(farm=farm)
    check_wish(farm, wish)
    length = expected_at(farm, head_count=wish.head_count, corrective_count=wish.corrective_count)
    visit = Visit(
        business_id=farm.business_id,
        farm=farm,
        reason=wish.reason.value,
        state=VisitState.WANTED.value,
        asked_by=wish.asked_by,
        asked_at=at,
        note=wish.note,
        due_from=wish.due_from,
        due_until=wish.due_until,
        mobility_scale=wish.mobility_scale.value if wish.mobility_scale else "",
        mobility_score=wish.mobility_score,
        head_count=wish.head_count,
        corrective_count=wish.corrective_count,
        expected_minutes=length.minutes,
        changed_at=at,
    )
    visit.full_clean()
    visit.save()
    for wished in wish.cows:
        _name_cow(visit, wished)
    add_event(visit, before="", at=at, by=by, note=wish.note)
    if roads_in_use().engine:
        # So that whoever asks at once when a van can come is answered by road.
        enqueue(Job.LEARN_ROADS, visit.business_id, visit_id=visit.pk)
    return visit


def check_wish(farm: Farm, wish: VisitWish) -> None:
    """WishMakesNoSense where no visit could be of that kind, whether it is only asked for or an hour is held for it."""
    if wish.due_until < wish.due_from:
        raise WishMakesNoSense("The last day is before the first: swap them.")
    if wish.head_count < 1:
        raise WishMakesNoSense("A visit needs at least one cow.")
    if wish.corrective_count > wish.head_count:
        raise WishMakesNoSense("More lame cows than cows: raise the number of cows.")
    if any(wished.cow.farm_id != farm.pk for wished in wish.cows):
        raise WishMakesNoSense("One of the cows is on another farm.")


def _name_cow(visit: Visit, wished: CowWish) -> None:
    asked = AskedCow(visit=visit, **naming_of(wished))
    asked.full_clean()
    asked.save()


def naming_of(wished: CowWish) -> dict[str, object]:
    """The columns of a row that names the cow: for a visit, or for an hour that is held."""
    return {
        "business_id": wished.cow.business_id,
        "cow": wished.cow,
        "why": wished.why,
        "mobility_scale": wished.mobility_scale.value if wished.mobility_scale else "",
        "mobility_score": wished.mobility_score,
        "lame_since": wished.lame_since,
    }
