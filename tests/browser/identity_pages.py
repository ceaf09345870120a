"""The pages on how people and programs come in; those behind one's password are in test_second_step.py."""

from collections.abc import Iterator
from datetime import timedelta

from django.urls import reverse
from django.utils import timezone

from tests.factories import House
from trimops.accounts.actions import Action
from trimops.accounts.roles import Role
from trimops.accounts.services.make_token import TokenWish, givable, make_token
from trimops.accounts.services.note_token_use import note_token_use
from trimops.accounts.services.revoke_token import revoke_token

# The sign-in library's, of which some ask for the password first, and some only lead on.
SECOND_STEP = {
    *("mfa_authenticate", "mfa_reauthenticate", "mfa_reauthenticate_webauthn", "mfa_login_webauthn"),
    *(
        "mfa_activate_totp",
        "mfa_deactivate_totp",
        "mfa_add_webauthn",
        "mfa_edit_webauthn",
        "mfa_remove_webauthn",
    ),
    *("mfa_generate_recovery_codes", "mfa_view_recovery_codes", "mfa_download_recovery_codes"),
}
BUTTONS = {"own_program_revoke", "program_revoke", "device_sign_out", "invitation_again"}


def identity_pages(house: House) -> Iterator[str]:
    """With a token that may much and was used, one that was revoked, and one that ended."""
    now, owner = timezone.now(), house.memberships[Role.OWNER]
    much = TokenWish(
        "The farm office's program on the machine in the kitchen", givable(Role.OWNER), timedelta(90)
    )
    little = TokenWish("Spreadsheet", {Action.SEE_FARMS}, timedelta(days=30))
    used, _ = make_token(membership=owner, wish=much, at=now)
    note_token_use(token=used, address="2001:db8:1234:5678:9abc:def0:1234:5678", at=now)
    gone, _ = make_token(membership=house.memberships[Role.TRIMMER], wish=little, at=now)
    revoke_token(token=gone, at=now, by=house.owner)
    make_token(membership=owner, wish=little, at=now - timedelta(days=60))
    yield from (reverse("own_programs"), reverse("programs"))
    yield from (reverse("api_page"), reverse("api_problems"))
    yield reverse("part", args=[house.memberships[Role.OFFICE].pk])
    yield from (reverse("mfa_index"), reverse("mfa_list_webauthn"), reverse("usersessions_list"))
