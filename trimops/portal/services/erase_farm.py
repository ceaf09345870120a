"""The owner carries out a farm's wish to be erased."""

from datetime import datetime

from django.db import transaction

from farms.models import Erasure, Farm, FarmAccess
from farms.selectors.erasures import open_erasure
from farms.services.ask_erasure import ask_erasure
from farms.services.forget_farm import forget_farm
from farms.services.refuse_erased import refuse_erased
from invoicing.selectors.books_of_farm import books_of_farm
from invoicing.services.forget_drafts import forget_drafts
from invoicing.services.forget_journeys import forget_journeys
from invoicing.services.forget_reminders import forget_reminders
from invoicing.services.forget_sendings import forget_sendings
from invoicing.services.forget_terms import forget_terms
from trimops.accounts.models import Membership, User
from trimops.accounts.services.forget_person import forget_person
from trimops.api.services.forget_answers import forget_answers
from trimops.audit.services.blot_audit import blot_audit
from trimops.errands.services.forget_errands import forget_errands
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from trimops.outbox.services.forget_outgoing import forget_outgoing
from trimops.portal.selectors.people_of_farm import people_of_farm
from visits.domain.visit_states import VisitState
from visits.models import Visit
from visits.services.forget_in_plans import forget_in_plans
from visits.services.forget_visits import forget_visits
from visits.services.sweep_roads import sweep_roads


class NameDoesNotMatch(RuleBroken):
    """Erasing wants the farm's name, typed: it cannot be taken back."""

    code = "name_does_not_match"


class VisitIsUnderWay(RuleBroken):
    """Somebody is at the farm's crush right now."""

    code = "visit_is_under_way"


@transaction.atomic
def erase_farm(*, farm: Farm, typed_name: str, at: datetime, by: User) -> Erasure:
    """Erase what is known of the farm and say what went and what stayed. It cannot be taken back.

    The books stay: issued invoices as they were printed, payments and what the bank said of them, reminders that went
    out, miles driven; and the visits that invoices hang on as bare rows. Money still owed forbids nothing: the page
    tells of it before. A wish that nobody had put down (the farm rang) is put down with it.
    """
    row = farm.locked()
    refuse_erased(farm=row)
    if " ".join(typed_name.split()).casefold() != " ".join(row.name.split()).casefold():
        raise NameDoesNotMatch(f"Type the name of the farm as it stands here: {row.name}.")
    scope = Scope(row.business_id)
    if Visit.objects.within(scope).filter(farm=row).in_state(VisitState.UNDER_WAY).exists():
        raise VisitIsUnderWay("A visit to this farm is under way: finish it or call it off first.")
    wish = open_erasure(scope, row) or ask_erasure(farm=row, note="", at=at, by=by)
    people, payer = people_of_farm(row), row.payer_id
    gone = forget_sendings(farm=row)
    gone["other messages"] = forget_outgoing(scope=scope, farm_id=row.pk, name=row.name)
    forget_errands(scope=scope, name=row.name)
    forget_answers(scope=scope)
    gone |= forget_reminders(farm=row) | forget_journeys(farm=row, at=at)
    kept = forget_drafts(farm=row)
    forget_in_plans(farm=row)
    gone |= forget_terms(farm=row) | forget_visits(farm=row, kept=kept.visits) | forget_farm(farm=row, at=at)
    gone |= {"drafts of invoices": kept.drafts, "people forgotten": _forget(people, scope, at)}
    sweep_roads(scope=scope, at=at)
    wish = wish.locked()
    stays = {**books_of_farm(scope, row), "visits without words": len(kept.visits)}
    wish.done_at, wish.done_by, wish.outcome = at, by, _outcome(gone, stays, wish.outcome)
    wish.full_clean()
    wish.save()
    roots = [f"farms.farm:{row.pk}", *([f"farms.payer:{payer}"] if gone.get("payers") else [])]
    blot_audit(scope=scope, roots=roots, at=at)
    return wish


def _forget(people: list[Membership], scope: Scope, at: datetime) -> int:
    """Those who see no other farm of the business any more."""
    left = [m for m in people if not FarmAccess.objects.within(scope).filter(membership=m).exists()]
    return sum(forget_person(membership=membership, at=at) for membership in left)


def _outcome(gone: dict[str, int], stays: dict[str, int], before: dict[str, object]) -> dict[str, object]:
    return {**before, "erased": {name: count for name, count in gone.items() if count}, "kept": stays}
