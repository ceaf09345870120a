"""What a trim said before it is changed, kept for good."""

from datetime import datetime

from trimops.accounts.models import User
from visits.models import Trim, TrimVersion
from visits.selectors.trim_content import trim_content


def keep_earlier_version(trim: Trim, *, at: datetime, by: User) -> TrimVersion:
    """Store the present words of `trim` as its version of that number."""
    row = TrimVersion(
        business_id=trim.business_id,
        trim=trim,
        version=trim.version,
        content=trim_content(trim),
        replaced_at=at,
        replaced_by=by,
    )
    row.full_clean()
    row.save()
    return row
