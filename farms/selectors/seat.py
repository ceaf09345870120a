"""Which seat a signed-in person takes."""

from farms.models import FarmAccess
from trimops.accounts.models import Membership, User
from trimops.accounts.roles import Role
from trimops.kernel.scope import Scope


def memberships_of(user: User) -> list[Membership]:
    """The person's current memberships, oldest first."""
    found = Membership.objects.filter(user=user, joined_at__isnull=False, ended_at__isnull=True)
    return list(found.select_related("business").order_by("joined_at", "id"))


def farms_open_to(membership: Membership) -> list[int]:
    """Keys of the farms a farm client may see, by name; empty for staff, who see all."""
    scope = Scope(membership.business_id)
    rows = FarmAccess.objects.within(scope).filter(membership=membership, farm__is_active=True)
    return list(rows.order_by("farm__name").values_list("farm_id", flat=True))


def scope_for(membership: Membership, wanted_farm: int | None) -> Scope | None:
    """Staff: the business. Farm client: the farm wanted if it is open to them, else their first; None without any."""
    if membership.role != Role.FARM:
        return Scope(membership.business_id)
    farms = farms_open_to(membership)
    if not farms:
        return None
    return Scope(membership.business_id, wanted_farm if wanted_farm in farms else farms[0])
