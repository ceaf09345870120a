"""A person who works in a business gets another part."""

from django.db import transaction

from trimops.accounts.models import Membership
from trimops.accounts.roles import STAFF, Role
from trimops.accounts.services.end_membership import require_other_owner
from trimops.kernel.errors import RuleBroken


class NoSuchPart(RuleBroken):
    """Who works in the business, and who belongs to a farm, do not change places by this."""

    code = "no_such_part"


@transaction.atomic
def change_role(*, membership: Membership, role: Role) -> Membership:
    """From the next page on they may what the new part may, and so may their programs, within what was given to them.

    LastOwner when nobody would own the business; NoSuchPart for a part at a farm, or a person who has left.
    """
    if role != Role.OWNER:
        require_other_owner(membership)
    row = Membership.objects.select_for_update().get(pk=membership.pk)
    if role not in STAFF or row.role not in STAFF or row.ended_at is not None:
        raise NoSuchPart("Only the part of somebody who works in the business can be changed here.")
    row.role = role.value
    row.save(update_fields=["role"])
    return row
