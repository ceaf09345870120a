"""A farm, or a person, is erased: what went to them and what waits to go is dropped."""

from collections.abc import Iterable

from django.db import transaction
from django.db.models import Q

from trimops.kernel.scope import Scope
from trimops.outbox.domain.outgoing_states import Topic
from trimops.outbox.models import Outgoing

OF_MANY_FARMS = (Topic.EVENING, Topic.PLAN)


@transaction.atomic
def forget_outgoing(
    *, scope: Scope, farm_id: int | None = None, addresses: Iterable[str] = (), name: str = ""
) -> int:
    """Drop the farm's messages, those to `addresses` and those about the work of several farms that name it, with log
    and papers; how many. What waits does not go."""
    about = Q(pk__in=[])
    if name.strip():
        about |= Q(topic__in=[topic.value for topic in OF_MANY_FARMS], body__icontains=name)
    if farm_id is not None:
        about |= Q(farm_id=farm_id)
    for address in filter(None, addresses):
        about |= Q(address__iexact=address)
    found = Outgoing.objects.within(scope).filter(about)
    count = found.count()
    found.delete()
    return count
