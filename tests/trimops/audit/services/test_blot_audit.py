"""What an entry held is erased; that it was written is still proven."""

import pytest
from django.db import DatabaseError, transaction
from django.utils import timezone

from farms.models import Contact
from tests.factories import NOON, blocked_foot, make_farm, put_down, under_way
from trimops.audit.models import AuditEntry
from trimops.audit.selectors.verify_chain import verify_chain
from trimops.audit.services.blot_audit import blot_audit
from trimops.audit.services.seal_audit import seal_audit


def blot(house, row=None, at=NOON):
    return blot_audit(scope=house.scope, roots=[f"farms.farm:{(row or house.farm).pk}"], at=at)


def test_all_that_ever_hung_on_the_farm_is_emptied_and_nothing_else(house, data_folder):
    other = make_farm(house.business, "High Croft", by=house.owner)
    put_down(under_way(house.farm, house.van), house.cow, blocked_foot())
    Contact.objects.create(business=house.business, farm=house.farm, name="Ida", part="herd").delete()
    count = blot(house)
    mine = AuditEntry.objects.within(house.scope).exclude(blotted_at=None)
    assert mine.count() == count
    whats = set(mine.order_by().values_list("what", flat=True))
    assert whats >= {"farms.contact", "farms.cow", "visits.finding", "visits.clawaction", "visits.block"}
    assert not mine.exclude(before="", after="", salt="", seen_from="").exists()
    kept = AuditEntry.objects.within(house.scope).filter(blotted_at=None)
    assert kept.filter(what="farms.farm", row_id=other.pk).exists()
    assert kept.filter(what="visits.van").exists()
    assert blot(house) == 0


def test_the_chain_holds_after_blotting_and_tells_how_many(house, data_folder):
    now = timezone.now()
    seal_audit(now=now)
    count = blot(house, at=now)
    verdict = verify_chain(house.scope, [])
    assert (verdict.faults, verdict.blotted) == ([], count)


def test_the_database_lets_only_a_whole_blot_through_and_only_once(house):
    rows = AuditEntry.objects.within(house.scope)
    empty = {"before": "", "after": "", "salt": "", "seen_from": "", "session": "", "blotted_at": NOON}
    for change in ({"after": ""}, {**empty, "salt": "x"}, {**empty, "via": "x"}, {"blotted_at": NOON}):
        with pytest.raises(DatabaseError, match="only added to"), transaction.atomic():
            rows.update(**change)
    rows.update(**empty)
    with pytest.raises(DatabaseError, match="only added to"), transaction.atomic():
        rows.update(**{**empty, "blotted_at": None})
