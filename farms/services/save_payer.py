"""Who pays for farms that do not pay themselves."""

from django.db import transaction

from farms.models import Payer


@transaction.atomic
def save_payer(*, payer: Payer) -> Payer:
    """Keep the payer. Invoices already issued keep the name and address they had."""
    payer.full_clean()
    payer.save()
    return payer
