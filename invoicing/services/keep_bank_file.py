"""A file of the bank is kept as it came."""

import hashlib
from datetime import datetime

from django.db import transaction

from invoicing.domain.bank_file import UnreadableBankFile, refuse_size
from invoicing.models import BankFile
from trimops.accounts.models import Business, User
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope


class BankFileRefused(RuleBroken):
    """The file is empty, too large, cannot be read, or was read before; the message says which."""

    code = "bank_file_refused"


@transaction.atomic
def keep_bank_file(*, business: Business, file_name: str, content: bytes, at: datetime, by: User) -> BankFile:
    """Keep it, not read yet. The same content again is the same row; BankFileRefused when that was read already."""
    try:
        refuse_size(content)
    except UnreadableBankFile as fault:
        raise BankFileRefused(str(fault)) from fault
    told = {"file_name": file_name[:200], "content": content, "kept_at": at, "kept_by": by}
    sha256 = hashlib.sha256(content).hexdigest()
    rows = BankFile.objects.within(Scope(business.pk))
    row, _ = rows.get_or_create(business=business, sha256=sha256, defaults=told)
    if row.read_at is not None:
        raise BankFileRefused(
            f"This very file was read before, as “{row.file_name}” on {row.read_at:%-d %b %Y}."
        )
    return row
