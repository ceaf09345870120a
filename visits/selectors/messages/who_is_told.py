"""How many people of the farms are told of visits, and by which way."""

from dataclasses import dataclass

from django.db.models import Count, Q

from farms.domain.told_by import ToldBy
from farms.models import Contact, Farm
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class WhoIsTold:
    """`stopped` asked for no more; `farms` are on the round, `silent` of them have nobody who is told."""

    by_mail: int
    by_sms: int
    stopped: int
    farms: int
    silent: int

    @property
    def anybody(self) -> bool:
        return bool(self.by_mail or self.by_sms)


def who_is_told(scope: Scope) -> WhoIsTold:
    """Two queries."""
    rows = Contact.objects.within(scope).filter(farm__is_active=True)
    told = ~Q(told_by="") & Q(opted_out_at__isnull=True)
    counts = rows.aggregate(
        by_mail=Count("pk", filter=told & Q(told_by=ToldBy.MAIL.value)),
        by_sms=Count("pk", filter=told & Q(told_by=ToldBy.SMS.value)),
        stopped=Count("pk", filter=Q(opted_out_at__isnull=False)),
        reached=Count("farm", filter=told, distinct=True),
    )
    farms = Farm.objects.within(scope).filter(is_active=True).count()
    reached = counts.pop("reached")
    return WhoIsTold(**counts, farms=farms, silent=farms - reached)
