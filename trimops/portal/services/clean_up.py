"""In the night of a business: what nobody needs any more is cleared away, a little at a time."""

from datetime import datetime, timedelta

from django.contrib.sessions.models import Session
from django.db import transaction

from farms.services.drop_ended_passes import drop_ended_passes
from farms.services.drop_old_herd_lists import drop_old_herd_lists
from invoicing.services.drop_ended_links import drop_ended_links
from invoicing.services.empty_old_bank_files import empty_old_bank_files
from trimops.api.services.drop_old_calls import drop_old_calls
from trimops.audit.services.cut_audit import cut_audit
from trimops.errands.services.drop_old_errands import drop_old_errands
from trimops.kernel.scope import Scope
from trimops.outbox.services.clear_old_messages import clear_old_messages
from trimops.portal.selectors.retention import months_before, retention_of
from visits.services.drop_old_crush_versions import drop_old_crush_versions
from visits.services.drop_old_holds import drop_old_holds
from visits.services.drop_old_photos import drop_old_photos
from visits.services.drop_old_watches import drop_old_watches

AT_ONCE = 500


def clean_up(*, scope: Scope, at: datetime) -> None:
    """What is older than the business keeps it (`RetentionRules`); hours held in vain, answers to calls that may be
    repeated; and sign-ins that have run out, which are nobody's in particular.

    Many short transactions instead of a long one; stopped anywhere it goes on the next night. Links to sign in are
    signed, not stored, so none are left to clear away. `at` is aware.
    """
    _by_the_rules(scope, at)
    drop_old_holds(scope=scope, at=at)
    drop_old_calls(scope=scope, at=at)
    while _drop_sign_ins(at):
        pass


def _by_the_rules(scope: Scope, at: datetime) -> None:
    rules = retention_of(scope)
    drop_old_errands(scope=scope, at=at, done_kept=timedelta(days=rules.errands_days))
    clear_old_messages(scope=scope, at=at, before=months_before(at, rules.messages_months))
    drop_old_photos(scope=scope, before=months_before(at, rules.photos_months))
    drop_old_crush_versions(scope=scope, at=at, before=months_before(at, rules.crush_months))
    drop_old_watches(scope=scope, before=months_before(at, rules.watches_months))
    drop_old_herd_lists(scope=scope, before=months_before(at, rules.herd_lists_months))
    ended = months_before(at, rules.links_months)
    drop_ended_passes(scope=scope, before=ended)
    drop_ended_links(scope=scope, before=ended)
    empty_old_bank_files(scope=scope, before=months_before(at, rules.bank_files_months))
    # because: a trail that somebody changed stops here, and all else is done by then
    cut_audit(scope=scope, years=rules.trail_years, at=at)


@transaction.atomic
def _drop_sign_ins(at: datetime) -> int:
    # because: the nights of many businesses come at the same moment, and must not wait for each other's rows
    rows = Session.objects.select_for_update(skip_locked=True).filter(expire_date__lt=at)
    keys = list(rows.order_by("expire_date").values_list("pk", flat=True)[:AT_ONCE])
    Session.objects.filter(pk__in=keys).delete()
    return len(keys)
