"""A farm's data as files: whoever takes them out by a program stands in the trail, as by a page."""

import pytest

from tests.visits.api.caller import Caller
from trimops.audit.domain.entry_kinds import EntryKind
from trimops.audit.models import AuditEntry

FILES = {"csv": "tables (CSV)", "xlsx": "tables (spreadsheet)", "ade": "animal data (ICAR ADE)"}


@pytest.mark.parametrize(("name", "words"), FILES.items())
def test_that_it_was_taken_out_is_told(house, name, words):
    address = f"/farms/{house.farm.pk}/data/{name}/"
    assert Caller(house.trimmer).get(address).status_code == 403
    rows = AuditEntry.objects.within(house.scope).filter(kind=EntryKind.HANDED_OUT.value)
    assert not rows.exists()
    assert Caller(house.office).get(address).status_code == 200
    entry = rows.get()
    assert (entry.by, entry.what, entry.row_id) == (house.office, "farms.farm", house.farm.pk)
    assert words in entry.after
