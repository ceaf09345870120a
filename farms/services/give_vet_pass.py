"""The farm lets its vet in: a secret link that shows what the farm allows, until a day."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime, timedelta

from django.db import transaction

from farms.models import Farm, VetPass
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.kernel.secret_link import hash_of, new_secret
from trimops.outbox.domain.outgoing_states import SECRET_PLACE, Channel, Topic
from trimops.outbox.services.put_out import Message, put_out

MOST_DAYS = 366
SHOWS = ("shows_letters", "shows_reports", "shows_cows", "shows_photos", "shows_figures")
"""What a pass may show, by its columns."""


class PassMakesNoSense(RuleBroken):
    """It shows nothing, or ends on no day that may be."""

    code = "pass_makes_no_sense"


@dataclass(frozen=True)
class VetWord:
    """Whom the pass is for, what it shows (of `SHOWS`), for how many days."""

    vet_name: str
    email: str
    shows: Collection[str]
    days: int


@dataclass(frozen=True)
class NewPass:
    """The stored row and the secret, which is shown once and never stored."""

    row: VetPass
    secret: str


@transaction.atomic
def give_vet_pass(*, farm: Farm, word: VetWord, at: datetime, by: User) -> NewPass:
    """A pass with 256 bits of chance in its link. PassMakesNoSense when it would show nothing, or for ever."""
    if farm.erased_at is not None:
        raise PassMakesNoSense("What was known of this farm is erased: there is nothing to show.")
    if not set(word.shows) & set(SHOWS):
        raise PassMakesNoSense("Choose at least one thing that the vet may see.")
    if not 1 <= word.days <= MOST_DAYS:
        raise PassMakesNoSense(f"The link ends after 1 to {MOST_DAYS} days: give another number.")
    secret = new_secret()
    row = VetPass(business_id=farm.business_id, farm=farm, vet_name=word.vet_name, email=word.email)
    row.secret_hash, row.made_at, row.made_by = hash_of(secret), at, by
    row.expires_at = at + timedelta(days=word.days)
    for name in SHOWS:
        setattr(row, name, name in word.shows)
    row.full_clean()
    row.save()
    return NewPass(row, secret)


@transaction.atomic
def mail_vet_pass(*, vet_pass: VetPass, address: str, at: datetime) -> None:
    """Send the link `address` to the vet, once the pass is committed; nothing without an e-mail address."""
    if not vet_pass.email:
        return
    farm, zone = vet_pass.farm, vet_pass.business.zone
    text = (
        f"{vet_pass.vet_name},\n\n{farm.name} lets you see what was found on its cows' feet at the trim:\n\n"
        f"{SECRET_PLACE}\n\n"
        f"The link opens without a password until {vet_pass.expires_at.astimezone(zone):%-d %B %Y}, or until the farm "
        f"closes it. Whoever holds it can open it, so keep it to yourself.\n\n"
        f"{vet_pass.business}\nWhat stands there was seen by a foot trimmer; it is no diagnosis.\n"
    )
    subject = f"Feet of the cows at {farm.name}"
    message = Message(
        channel=Channel.MAIL,
        topic=Topic.VET,
        address=vet_pass.email,
        subject=subject,
        body=text,
        secret=address,
        once=f"vet_pass:{vet_pass.pk}",
        farm_id=farm.pk,
        worthless_after=vet_pass.expires_at,
    )
    put_out(business_id=vet_pass.business_id, message=message, at=at, by=vet_pass.made_by)
