"""Several proposals are accepted at one press."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal

from farms.models import Farm
from invoicing.models import BankEntry, Payment
from invoicing.services.match_entry import match_entry
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken


@dataclass(frozen=True)
class Accepted:
    """One proposal as the person saw it: the farm and key of an invoice -> amount."""

    entry: BankEntry
    farm: Farm
    shares: Mapping[int, Decimal]


def match_entries(
    *, accepted: Sequence[Accepted], at: datetime, by: User
) -> tuple[list[Payment], list[tuple[BankEntry, str]]]:
    """Book each by itself. What no longer holds (paid meanwhile, matched by another) is told and the others go on."""
    booked, refused = [], []
    for one in accepted:
        try:
            booked.append(match_entry(entry=one.entry, farm=one.farm, shares=one.shares, at=at, by=by))
        except RuleBroken as fault:
            refused.append((one.entry, fault.message))
    return booked, refused
