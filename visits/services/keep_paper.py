"""A paper leaves the house: kept as it was drawn, with its hash."""

import hashlib
from datetime import datetime
from typing import TypeVar

from trimops.accounts.models import User
from visits.documents.referral_letter_content import ReferralLetterContent
from visits.documents.stored_content import to_stored
from visits.documents.visit_report_content import VisitReport
from visits.models.issued_paper import IssuedPaper

P = TypeVar("P", bound=IssuedPaper)
Content = VisitReport | ReferralLetterContent


def keep_paper(*, row: P, content: Content, pdf: bytes, at: datetime, by: User | None) -> P:
    """Store the version whose row says what it hangs on. Call inside a transaction that holds that locked."""
    row.version, row.changed = content.version, content.change_note
    row.content, row.pdf, row.sha256 = to_stored(content), pdf, hashlib.sha256(pdf).hexdigest()
    row.made_at, row.made_by = at, by
    row.full_clean()
    row.save()
    return row
