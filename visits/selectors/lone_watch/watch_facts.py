"""What is known of one watch, for the rule that says what it does next and for those who are told."""

from datetime import datetime, timedelta

from django.db.models import Count, Max, Q

from trimops.accounts.models import Membership
from trimops.kernel.scope import Scope
from visits.domain.lone_watch.expected_end import WorkSoFar, expected_end, grace_of
from visits.domain.lone_watch.quiet_place import MOST_VISITS, is_quiet_place
from visits.domain.lone_watch.watch_step import WatchFacts
from visits.domain.lone_watch.watch_words import Missed, Whereabouts
from visits.domain.visit_states import VisitState
from visits.models import CrushWriting, LoneWatch, Trim, Visit, WatchRules


def facts_of(watch: LoneWatch, rules: WatchRules, visit: Visit) -> WatchFacts:
    """By the rules as they are now and the visit as it stands."""
    work, own_cow_at = _work_of(watch, visit)
    signs = [at for at in (own_cow_at, visit.started_at) if at is not None]
    grace = grace_of(
        timedelta(minutes=rules.grace_minutes),
        is_quiet_place=watch.is_quiet_place,
        began_at=watch.began_at,
        heard_at=watch.last_heard_at,
    )
    return WatchFacts(
        state=watch.watch_state,
        expected_end=expected_end(work),
        grace=grace,
        answer=timedelta(minutes=rules.answer_minutes),
        repeat=timedelta(minutes=rules.repeat_minutes),
        well_until=watch.well_until,
        asked_at=watch.asked_at,
        answer_until=watch.answer_until,
        was_away=watch.was_away,
        told_at=watch.told_at,
        tellings=watch.tellings,
        taken_at=watch.taken_at,
        last_sign_at=max(signs, default=None),
        heard_at=watch.last_heard_at,
    )


def _work_of(watch: LoneWatch, visit: Visit) -> tuple[WorkSoFar, datetime | None]:
    """The work so far, and when the trimmer's own phone noted its newest cow."""
    rows = Trim.objects.within(watch.scope).filter(visit=visit)
    own = Max("recorded_at", filter=Q(recorded_by_id=watch.trimmer_id))
    found = rows.aggregate(cows=Count("id"), last=Max("recorded_at"), own=own)
    work = WorkSoFar(
        began_at=watch.began_at,
        expected=timedelta(minutes=visit.expected_minutes),
        head_count=visit.head_count,
        cows_done=found["cows"],
        last_cow_at=found["last"],
    )
    return work, found["own"]


def missed_of(watch: LoneWatch, now: datetime) -> Missed:
    """What those who are asked or told must know. The watch has a visit."""
    visit = Visit.objects.within(watch.scope).select_related("farm", "business").get(watches=watch)
    farm, business = visit.farm, visit.business
    place = Whereabouts(
        farm=farm.name,
        address=farm.address,
        latitude=str(farm.latitude),
        longitude=str(farm.longitude),
        access_notes=farm.access_notes,
        phone=farm.phone,
        country=farm.country or business.country,
    )
    last = Trim.objects.within(watch.scope).filter(visit=visit).aggregate(at=Max("recorded_at"))["at"]
    return Missed(
        trimmer=watch.trimmer.name,
        trimmer_phone=phone_of(watch),
        place=place,
        began_at=watch.began_at,
        expected_end=watch.expected_finish,
        asked_at=watch.asked_at,
        heard_at=watch.last_heard_at,
        last_cow_at=last,
        is_by_plan=watch.is_by_plan,
        is_quiet_place=watch.is_quiet_place,
        taken_by=watch.taken_by,
        now=now,
        zone=business.zone,
    )


def phone_of(watch: LoneWatch) -> str:
    """The number of the trimmer's own phone, "" where none is kept."""
    rows = Membership.objects.filter(business_id=watch.business_id, user_id=watch.trimmer_id)
    return rows.values_list("phone", flat=True).first() or ""


def is_known_quiet(visit: Visit) -> bool:
    """Whether what was noted at the farm's newest visits came in late."""
    scope = Scope(visit.business_id)
    done = Visit.objects.within(scope).filter(farm_id=visit.farm_id).in_state(VisitState.FINISHED)
    newest = list(done.order_by("-finished_at").values_list("pk", flat=True)[: MOST_VISITS + 2])
    waits: dict[int, list[timedelta]] = {pk: [] for pk in newest}
    rows = CrushWriting.objects.within(scope).filter(visit_id__in=newest)
    for pk, made, received in rows.values_list("visit_id", "placed_at", "received_at"):
        waits[pk].append(received - made)
    return is_quiet_place(waits[pk] for pk in newest)
