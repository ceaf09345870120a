"""How many cows a visit counts with once its draft list was changed, so that the others on the list stay on it."""

from visits.domain.draft_order import DraftOrder


def count_without(count: int, order: DraftOrder, cow_id: int) -> int:
    """Once the cow is taken off: a list as long as expected gets one shorter, so that nobody moves up unasked.

    A list with places left keeps them. Never below one: a visit is for a cow at least.
    """
    full = len(order.present) >= count
    return max(1, len(order.present) - 1) if full and order.has(cow_id) else count


def count_with(count: int, order: DraftOrder, cow_id: int) -> int:
    """Once the cow is added: a full list gets one longer, so that nobody falls off it for her."""
    return count if order.has(cow_id) else max(count, len(order.present) + 1)
