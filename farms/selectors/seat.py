"""Which seat a signed-in person takes."""

from dataclasses import dataclass

from farms.models import FarmAccess
from trimops.accounts.models import Membership, User
from trimops.accounts.roles import FarmRight, Role
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class Place:
    """The rows a person sees, and what they may do at the farm if it is one farm's."""

    scope: Scope
    rights: frozenset[FarmRight] = frozenset()


def memberships_of(user: User) -> list[Membership]:
    """The person's current memberships, oldest first."""
    found = Membership.objects.filter(user=user, joined_at__isnull=False, ended_at__isnull=True)
    return list(found.select_related("business").order_by("joined_at", "id"))


def farms_open_to(membership: Membership) -> list[FarmAccess]:
    """The farms a farm client may see, by name; empty for staff, who see all."""
    scope = Scope(membership.business_id)
    rows = FarmAccess.objects.within(scope).filter(membership=membership, farm__is_active=True)
    return list(rows.select_related("farm").order_by("farm__name"))


def place_of(membership: Membership, wanted_farm: int | None) -> Place | None:
    """Staff: the business. Farm client: the farm wanted if it is open to them, else their first; None without any."""
    if membership.role != Role.FARM:
        return Place(Scope(membership.business_id))
    open_farms = farms_open_to(membership)
    if not open_farms:
        return None
    access = next((each for each in open_farms if each.farm_id == wanted_farm), open_farms[0])
    return Place(Scope(membership.business_id, access.farm_id), rights_of(access))


def rights_of(access: FarmAccess) -> frozenset[FarmRight]:
    """The rights given with the access."""
    return frozenset(right for right in FarmRight if getattr(access, right.value))
