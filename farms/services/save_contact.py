"""People at a farm: put on the list, or taken off."""

from django.db import transaction

from farms.models import Contact


@transaction.atomic
def save_contact(*, contact: Contact) -> Contact:
    """Keep the person. ValidationError names what to mend."""
    contact.full_clean()
    contact.save()
    return contact


@transaction.atomic
def remove_contact(*, contact: Contact) -> None:
    """Take the person off the farm's list."""
    contact.delete()
