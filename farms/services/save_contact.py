"""People at a farm: put on the list, or taken off."""

from django.db import transaction

from farms.models import Contact
from farms.services.refuse_erased import refuse_erased


@transaction.atomic
def save_contact(*, contact: Contact) -> Contact:
    """Keep the person. ValidationError names what to mend."""
    refuse_erased(farm=contact.farm)
    contact.full_clean()
    contact.save()
    return contact


@transaction.atomic
def remove_contact(*, contact: Contact) -> None:
    """Take the person off the farm's list."""
    contact.delete()
