"""How a person wants to be told things is their own to say."""

from django.db import transaction

from trimops.accounts.models import Membership


@transaction.atomic
def save_own_ways(*, membership: Membership, phone: str, evening_mail: bool) -> Membership:
    """Keep the number and the switch of the evening's mail; they hold in this business alone. ValidationError names
    what to mend."""
    row = Membership.objects.select_for_update().get(pk=membership.pk)
    row.phone, row.evening_mail = phone.strip(), evening_mail
    row.clean_fields(exclude=["user", "business", "invited_by"])
    row.save(update_fields=["phone", "evening_mail"])
    return row
