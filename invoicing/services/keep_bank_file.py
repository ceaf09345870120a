"""A file of the bank is kept as it came."""

import hashlib
from datetime import datetime

from django.db import transaction

from invoicing.domain.bank_csv import refuse_what_is_no_text
from invoicing.domain.bank_file import UnreadableBankFile, refuse_size
from invoicing.domain.camt053 import looks_like_xml, read_camt053
from invoicing.models import BankFile
from trimops.accounts.models import Business, User
from trimops.kernel.errors import RuleBroken
from trimops.kernel.file_kinds import STATEMENTS, ending_fault
from trimops.kernel.scope import Scope


class BankFileRefused(RuleBroken):
    """The file is empty, too large, cannot be read, or was read before; the message says which."""

    code = "bank_file_refused"


def keep_bank_file(*, business: Business, file_name: str, content: bytes, at: datetime, by: User) -> BankFile:
    """Keep it, not read yet. The same content again is the same row; BankFileRefused when that was read already.

    An XML that is no CAMT.053 that can be read, what is neither XML nor text, and what is not what its name says
    is refused and not kept.
    """
    if wrong := ending_fault(file_name, content, STATEMENTS):
        raise BankFileRefused(wrong)
    try:
        _judge(content)
    except UnreadableBankFile as fault:
        raise BankFileRefused(str(fault)) from fault
    return _keep(business, file_name, content, at, by)


def _judge(content: bytes) -> None:
    refuse_size(content)
    if looks_like_xml(content):
        read_camt053(content)
    else:
        refuse_what_is_no_text(content)


@transaction.atomic
def _keep(business: Business, file_name: str, content: bytes, at: datetime, by: User) -> BankFile:
    told = {"file_name": file_name[:200], "content": content, "kept_at": at, "kept_by": by}
    sha256 = hashlib.sha256(content).hexdigest()
    rows = BankFile.objects.within(Scope(business.pk))
    row, _ = rows.get_or_create(business=business, sha256=sha256, defaults=told)
    if row.read_at is not None:
        raise BankFileRefused(
            f"This very file was read before, as “{row.file_name}” on {row.read_at:%-d %b %Y}."
        )
    return row
