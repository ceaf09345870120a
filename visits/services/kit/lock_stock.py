"""Two who write of a business's stock at once do so one after the other."""

from trimops.kernel.scope import Scope
from visits.models import Consumable


def lock_stock(*, scope: Scope) -> None:
    """Lock all consumables of the business until the transaction ends. One query.

    All at once and in one order: whoever books twice in a transaction must not wait for somebody who waits for them.
    """
    list(Consumable.objects.within(scope).order_by("pk").only("pk").locked())
