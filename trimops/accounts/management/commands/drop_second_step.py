"""`python manage.py drop_second_step a@b.example`: for a person who lost phone, passkeys and codes on paper."""

from argparse import ArgumentParser

from django.core.management.base import BaseCommand, CommandError
from django.utils import timezone

from trimops.accounts.models import User
from trimops.accounts.services.drop_second_step import drop_second_step
from trimops.watch.security_lines import note_security


class Command(BaseCommand):
    """First be sure that it is they: face to face, or by the telephone number that the business knows of them."""

    help = "Take a person's second step away, so that their password alone lets them in. Be sure first that it is they."

    def add_arguments(self, parser: ArgumentParser) -> None:
        parser.add_argument("email", help="the person's e-mail address")

    def handle(self, *args: object, **options: object) -> None:
        user = User.objects.filter(email=str(options["email"]).strip().lower()).first()
        if user is None:
            raise CommandError("Nobody has this address.")
        steps = drop_second_step(user=user, at=timezone.now())
        note_security("way_in_changed", what="second_step_dropped", whom=user.pk, steps=steps)
        self.stdout.write(f"{steps} taken away. They sign in by their password and were told by mail.")
