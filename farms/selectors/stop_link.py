"""The address behind which a person of a farm says that no more messages are wanted, without signing in."""

from django.conf import settings
from django.urls import reverse

from farms.models import Contact
from trimops.tenancy.signed_numbers import numbers_of, signed_numbers
from trimops.tenancy.unscoped import unscoped

WHAT = "stop"


def stop_link(contact: Contact) -> str:
    """The whole address."""
    return settings.SITE_ADDRESS + reverse("stop_messages", args=[signed_numbers(WHAT, contact.pk)])


def contact_of_link(word: str) -> Contact | None:
    """The person, with farm and business at hand; None where the word is none of ours, or nobody goes by it now."""
    numbers = numbers_of(WHAT, word)
    if numbers is None:
        return None
    with unscoped("the word of a link is the key"):
        return Contact.objects.select_related("farm", "business").filter(pk=numbers[0]).first()
