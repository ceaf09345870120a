"""`python manage.py open_business NAME --owner "Full Name" --email a@b`: begin a business."""

from argparse import ArgumentParser

from django.core.exceptions import ValidationError
from django.core.management.base import BaseCommand, CommandError
from django.urls import reverse
from django.utils import timezone

from trimops.accounts.models import Business
from trimops.accounts.roles import Role
from trimops.accounts.services.invite_person import Guest, invitation_token
from trimops.accounts.services.open_business import open_business


class Command(BaseCommand):
    """Prints the address with which the owner comes in and chooses a password."""

    help = "Begin a business and print the owner's way in."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("name")
        parser.add_argument("--owner", required=True, help="the owner's name")
        parser.add_argument("--email", required=True, help="the owner's e-mail address")
        parser.add_argument("--timezone", default="Europe/London", help="IANA name")
        parser.add_argument("--currency", default="GBP", help="three letters of ISO 4217")
        parser.add_argument("--country", default="GB", help="two letters of ISO 3166-1")

    def handle(self, *args: object, **options: object) -> None:
        said = {key: str(value) for key, value in options.items()}
        business = Business(
            name=said["name"], timezone=said["timezone"], currency=said["currency"], country=said["country"]
        )
        owner = Guest(said["email"], said["owner"], Role.OWNER)
        try:
            membership = open_business(business=business, owner=owner, at=timezone.now())
        except ValidationError as fault:
            raise CommandError("; ".join(fault.messages)) from None
        self.stdout.write(f"{business.name} is open. {owner.name} comes in at this address of your site:")
        self.stdout.write(reverse("invitation", args=[invitation_token(membership)]))
