"""Nothing is put down for a farm whose data were erased."""

from farms.models import Farm
from trimops.kernel.errors import RuleBroken


class FarmIsErased(RuleBroken):
    """Only its invoices are kept."""

    code = "farm_is_erased"


def refuse_erased(*, farm: Farm) -> None:
    """FarmIsErased, so that nothing of it comes back from an open page, or from a phone that was long in the van."""
    if farm.erased_at is not None:
        raise FarmIsErased("What was known of this farm is erased: nothing is put down for it any more.")
