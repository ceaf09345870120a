"""What Django's `check` says of how people come in, before anybody does."""

import os
from collections.abc import Iterable, Sequence
from typing import Final

from django.conf import settings
from django.core.checks import CheckMessage, Error, Warning

THIS_MACHINE: Final = {"localhost", "127.0.0.1", "[::1]"}


def stolen_passwords_can_be_read(
    app_configs: Sequence[object] | None, **said: object
) -> Iterable[CheckMessage]:
    """Else nobody could set a password."""
    named = settings.STOLEN_PASSWORDS
    if named and not (os.path.isfile(named) and os.access(named, os.R_OK)):
        yield Error(f"TRIMOPS_STOLEN_PASSWORDS names {named}, which cannot be read.", id="accounts.E001")


def nobody_comes_from_elsewhere_without_https(
    app_configs: Sequence[object] | None, **said: object
) -> Iterable[CheckMessage]:
    """Passwords and sign-ins would go over the line for all to read (ASVS 12.2.1)."""
    if settings.IS_HTTPS or settings.DEBUG:
        return
    if others := sorted(set(settings.ALLOWED_HOSTS) - THIS_MACHINE):
        words = f"The site answers to {', '.join(others)} without HTTPS: passwords can be read on the way."
        yield Warning(
            words,
            hint="Put a proxy with a certificate before it and set TRIMOPS_HTTPS=1.",
            id="accounts.W001",
        )
