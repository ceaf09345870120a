"""A cow is handed to the vet by letter: drawn once, kept with its hash, replaced only by a later version."""

from dataclasses import replace
from datetime import datetime

from django.db import transaction

from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from visits.documents.referral_letter import referral_letter
from visits.documents.referral_letter_change import letter_changes
from visits.models import Referral, ReferralLetter, Trim
from visits.selectors.issued_letters import newest_letter, stored_letter
from visits.selectors.letter_content import letter_content, pictures_of
from visits.services.issue_report import NothingNew
from visits.services.keep_paper import keep_paper


class NothingForVet(RuleBroken):
    """Nothing of this cow was left to the vet."""

    code = "nothing_for_vet"


@transaction.atomic
def issue_letter(*, trim: Trim, at: datetime, by: User | None) -> ReferralLetter:
    """The first version, or a later one that says what it changes. NothingForVet, NothingNew."""
    row = trim.locked()
    if not Referral.objects.within(row.scope).filter(trim=row).exists():
        raise NothingForVet("Nothing of this cow is noted for the vet, so there is nothing to write.")
    before = newest_letter(row.scope, row)
    letter = letter_content(row, at)
    if before is not None:
        changes = letter_changes(stored_letter(before), letter)
        if not changes:
            raise NothingNew(f"Version {before.version} of the letter says already what is known of her.")
        letter = replace(letter, version=before.version + 1, change_note="; ".join(changes))
    issued = ReferralLetter(business_id=row.business_id, trim=row)
    pdf = referral_letter(letter, pictures_of(row, letter))
    return keep_paper(row=issued, content=letter, pdf=pdf, at=at, by=by)
