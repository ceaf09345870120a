"""When farms are told, and when they are left in peace."""

from dataclasses import dataclass
from datetime import datetime, time

from django.db import transaction

from trimops.accounts.models import Business
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.kernel.clock import at_local, local_day
from trimops.kernel.errors import FieldRefused
from trimops.kernel.scope import Scope
from visits.domain.messages.message_kinds import MessageKind
from visits.models import MessageRules


class RuleMakesNoSense(FieldRefused):
    """An hour that cannot be; `field` says which."""

    code = "message_rule_makes_no_sense"


@dataclass(frozen=True)
class RulesWord:
    """By the business's own clock."""

    quiet_from: time
    quiet_until: time
    tomorrow_at: time
    late_minutes: int


@transaction.atomic
def save_message_rules(*, business: Business, word: RulesWord, at: datetime) -> MessageRules:
    """Keep them. RuleMakesNoSense when tomorrow would be told in the quiet of the night."""
    row = locked_rules(business)
    row.quiet_from, row.quiet_until = word.quiet_from, word.quiet_until
    row.tomorrow_at, row.late_minutes = word.tomorrow_at, word.late_minutes
    today = local_day(at, business.zone)
    evening = at_local(today, word.tomorrow_at, business.zone)
    if row.quiet.over_at(evening) != evening:
        raise RuleMakesNoSense("tomorrow_at", "Farms are left in peace at that hour: choose another.")
    row.full_clean()
    row.save()
    want_tomorrow(row, at)
    return row


@transaction.atomic
def switch_message(*, business: Business, kind: MessageKind, on: bool, at: datetime) -> MessageRules:
    """From now on this kind goes by itself, or does not; what waits to go still goes."""
    row = locked_rules(business)
    others = [each for each in row.switched_on if each != kind.value]
    row.switched_on = [*others, kind.value] if on and kind.is_switched else others
    row.save()
    want_tomorrow(row, at)
    return row


def locked_rules(business: Business) -> MessageRules:
    """The business's own, or new ones, unsaved."""
    found = MessageRules.objects.within(Scope(business.pk)).locked().first() or MessageRules()
    found.business = business
    return found


def want_tomorrow(rules: MessageRules, at: datetime) -> None:
    """Today's errand may have seen the rules as they were, and be over: another, which finds nothing if it is not."""
    zone = rules.business.zone
    due = at_local(local_day(at, zone), rules.tomorrow_at, zone)
    if rules.is_on(MessageKind.TOMORROW) and at < due:
        pk = rules.business_id
        enqueue(Job.TELL_TOMORROW, pk, not_before=due, business_id=pk)
