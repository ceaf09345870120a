"""The owner erases a person of the business: name, address and what was sent to them go; what the law wants stays."""

from datetime import datetime

from django.db import transaction

from trimops.accounts.models import Membership
from trimops.accounts.services.end_membership import end_membership
from trimops.accounts.services.forget_person import forget_person
from trimops.api.services.forget_answers import forget_answers
from trimops.audit.services.blot_audit import blot_audit
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from trimops.portal.selectors.erasing_person import nothing_runs_on


class PersonNameDoesNotMatch(RuleBroken):
    """Erasing wants the person's name, typed: it cannot be taken back."""

    code = "person_name_does_not_match"


class PersonIsAtWork(RuleBroken):
    """A visit of theirs is under way, or somebody watches over them."""

    code = "person_is_at_work"


@transaction.atomic
def erase_person(*, membership: Membership, typed_name: str, at: datetime) -> bool:
    """End the membership and forget the person; True when their account is gone, False where it is needed elsewhere.

    What they did stays, by "Erased person". The last owner stays (LastOwner of `end_membership`).
    """
    row = Membership.objects.select_for_update().select_related("user").get(pk=membership.pk)
    if " ".join(typed_name.split()).casefold() != " ".join(row.user.name.split()).casefold():
        raise PersonNameDoesNotMatch(f"Type the name as it stands here: {row.user.name}.")
    if not nothing_runs_on(Scope(row.business_id), row.user):
        raise PersonIsAtWork(
            "A visit of theirs is under way, or they are watched over: wait until it has ended."
        )
    if row.ended_at is None and row.joined_at is not None:
        end_membership(membership=row, at=at)
    is_gone = forget_person(membership=row, at=at)
    row.refresh_from_db()
    row.phone, row.evening_mail = "", False
    row.save(update_fields=["phone", "evening_mail"])
    forget_answers(scope=Scope(row.business_id))
    # because: the trail keeps what a row was before, and so what was taken out just now
    blot_audit(scope=Scope(row.business_id), roots=[f"accounts.membership:{row.pk}"], at=at)
    return is_gone
