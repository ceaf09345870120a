"""`python manage.py end_sessions a@b.example`, or `--all`: whoever keeps the machine signs people out."""

from argparse import ArgumentParser

from django.core.management.base import BaseCommand, CommandError

from trimops.accounts.models import User
from trimops.accounts.services.end_sessions import end_all_sessions, end_sessions
from trimops.watch.security_lines import note_security


class Command(BaseCommand):
    """They sign in again; what a phone keeps of the crush stays on it. Tokens of programs are revoked on their page."""

    help = "End every sign-in of one person, or of all."

    def add_arguments(self, parser: ArgumentParser) -> None:
        whom = parser.add_mutually_exclusive_group(required=True)
        whom.add_argument("email", nargs="?", help="the person's e-mail address")
        whom.add_argument("--all", action="store_true", help="everybody")

    def handle(self, *args: object, **options: object) -> None:
        if options["all"]:
            ended = end_all_sessions()
            note_security("signed_out_elsewhere", whom="everybody", ended=ended)
        else:
            user = User.objects.filter(email=str(options["email"]).strip().lower()).first()
            if user is None:
                raise CommandError("Nobody has this address.")
            ended = end_sessions(user=user)
            note_security("signed_out_elsewhere", whom=user.pk, ended=ended)
        self.stdout.write(f"{ended} signed out.")
