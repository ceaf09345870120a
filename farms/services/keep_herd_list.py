"""A herd list is handed in and kept, but changes nothing yet."""

from datetime import datetime

from django.db import transaction

from farms.domain.herd_list import read_herd_list
from farms.domain.herd_table import UnreadableHerdList, read_table
from farms.models import Farm, HerdImport
from farms.services.refuse_erased import refuse_erased
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.kernel.file_kinds import TABLES, ending_fault


class HerdListUnreadable(RuleBroken):
    """The file is no herd list; the message says what to do."""

    code = "herd_list_unreadable"


def keep_herd_list(*, farm: Farm, file_name: str, content: bytes, at: datetime, by: User) -> HerdImport:
    """Store the file for its preview. HerdListUnreadable when it is no list, or not what it is called."""
    if wrong := ending_fault(file_name, content, TABLES):
        raise HerdListUnreadable(wrong)
    try:
        read_herd_list(read_table(content))
    except UnreadableHerdList as fault:
        raise HerdListUnreadable(str(fault)) from fault
    return _keep(farm, file_name, content, at, by)


@transaction.atomic
def _keep(farm: Farm, file_name: str, content: bytes, at: datetime, by: User) -> HerdImport:
    refuse_erased(farm=farm)
    row = HerdImport(
        business_id=farm.business_id,
        farm=farm,
        file_name=file_name[:200],
        content=content,
        uploaded_at=at,
        uploaded_by=by,
    )
    row.full_clean()
    row.save()
    return row
