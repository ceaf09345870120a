"""The address of an invitation, as this site is reached, goes out by mail."""

from datetime import datetime

from django.http import HttpRequest
from django.urls import reverse

from trimops.accounts.models import Membership
from trimops.accounts.services.invite_person import invitation_token, mail_invitation


def send_invitation(request: HttpRequest, membership: Membership, at: datetime) -> None:
    """Mail the person their link."""
    address = request.build_absolute_uri(reverse("invitation", args=[invitation_token(membership)]))
    mail_invitation(membership=membership, address=address, at=at)
