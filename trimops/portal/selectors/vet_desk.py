"""What a vet sees by the farm's link."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from django.db.models.functions import Length

from farms.models import Cow, VetPass
from farms.selectors.vet_passes import is_still_given
from trimops.kernel.scope import Scope
from trimops.kernel.secret_link import hash_of
from trimops.tenancy.unscoped import unscoped
from visits.models import IssuedReport, Referral, ReferralLetter

MOST_COWS = 40
MOST_REPORTS = 24
SINCE = timedelta(days=182)


@dataclass(frozen=True)
class VetCow:
    """A cow that was left to the vet at one visit: what was seen, and whether there is a letter."""

    trim: int
    cow: Cow
    at: datetime
    reasons: tuple[str, ...]
    told: str
    has_letter: bool


def vet_pass_of(secret: str, at: datetime) -> VetPass | None:
    """The pass that the secret opens at that moment; None for an unknown, ended or closed one, and for a farm no
    longer served, alike."""
    with unscoped("the secret alone says whose farm it is"):
        rows = VetPass.objects.filter(secret_hash=hash_of(secret)).select_related("farm", "business")
        found = rows.first()
    if found is None or not found.is_open(at) or not found.farm.is_active:
        return None
    return found if is_still_given(found) else None


def cows_for_vet(scope: Scope, at: datetime) -> list[VetCow]:
    """Those of the last half year, the newest first. Two queries."""
    rows = Referral.objects.within(scope).filter(
        trim__taken_back_at__isnull=True, trim__recorded_at__gte=at - SINCE
    )
    by_trim: dict[int, list[Referral]] = {}
    for row in rows.select_related("trim__cow").order_by("-trim__recorded_at", "pk"):
        by_trim.setdefault(row.trim_id, []).append(row)
    letters = ReferralLetter.objects.within(scope).filter(trim_id__in=list(by_trim))
    written = set(letters.values_list("trim_id", flat=True))
    return [_cow(found, key in written) for key, found in by_trim.items()]


def reports_for_vet(scope: Scope) -> list[IssuedReport]:
    """The newest version of each of the last visits, without its PDF. One query."""
    rows = IssuedReport.objects.within(scope).defer("pdf", "content").select_related("visit")
    newest: dict[int, IssuedReport] = {}
    for row in rows.order_by("-visit__finished_at", "-version")[: MOST_REPORTS * 3]:
        newest.setdefault(row.visit_id, row)
    return list(newest.values())[:MOST_REPORTS]


def cows_found(scope: Scope, text: str) -> list[Cow]:
    """Cows that go by that number or tag; nothing for nothing."""
    if not text:
        return []
    rows = Cow.objects.within(scope).known_as(text)
    return list(rows.order_by(Length("number"), "number", "pk")[:MOST_COWS])


def _cow(found: list[Referral], has_letter: bool) -> VetCow:
    first = found[0]
    told = ", ".join(dict.fromkeys(row.told_whom for row in found if row.told_whom))
    reasons = tuple(f"{row.get_foot_display()}: {row.reason}" if row.foot else row.reason for row in found)
    return VetCow(first.trim_id, first.trim.cow, first.trim.recorded_at, reasons, told, has_letter)
