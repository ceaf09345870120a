"""The letters to the vet that were issued, which cows of a visit may have one, and whether a letter still says all."""

from collections.abc import Mapping
from dataclasses import dataclass

from trimops.kernel.scope import Scope
from visits.documents.referral_letter_change import letter_changes
from visits.documents.referral_letter_content import ReferralLetterContent
from visits.documents.stored_content import from_stored
from visits.models import Referral, ReferralLetter, Trim, Visit
from visits.selectors.letter_content import as_seen_now


@dataclass(frozen=True)
class CowForVet:
    """A cow of a visit that is the vet's, the newest version of her letter (None: not issued yet), and what was noted
    or mended since."""

    trim: Trim
    letter: ReferralLetter | None
    since: tuple[str, ...] = ()


def cows_for_vet(scope: Scope, visit: Visit) -> tuple[CowForVet, ...]:
    """In the order in which they were done; a fixed number of queries."""
    referrals = Referral.objects.within(scope).filter(trim__visit=visit, trim__taken_back_at__isnull=True)
    trims = {row.trim_id: row.trim for row in referrals.select_related("trim__cow")}
    rows = ReferralLetter.objects.within(scope).filter(trim_id__in=trims).defer("pdf")
    newest = {row.trim_id: row for row in rows.order_by("version")}
    since = _since(scope, visit, newest)
    ordered = sorted(trims.values(), key=lambda trim: (trim.recorded_at, trim.pk))
    return tuple(CowForVet(trim, newest.get(trim.pk), since.get(trim.pk, ())) for trim in ordered)


def newest_letter(scope: Scope, trim: Trim) -> ReferralLetter | None:
    """The version in force, PDF and all."""
    return ReferralLetter.objects.within(scope).filter(trim=trim).order_by("-version").first()


def stored_letter(row: ReferralLetter) -> ReferralLetterContent:
    """What stands on that version, as values."""
    return from_stored(ReferralLetterContent, row.content)


def _since(scope: Scope, visit: Visit, newest: Mapping[int, ReferralLetter]) -> dict[int, tuple[str, ...]]:
    """What each letter does not say yet, by its trim's id."""
    if not newest:
        return {}
    written = {trim: stored_letter(row) for trim, row in newest.items()}
    now = as_seen_now(scope, visit, written)
    return {trim: letter_changes(written[trim], letter) for trim, letter in now.items()}
