"""The oldest part of a trail goes; the database lets nothing else go, on SQLite and on PostgreSQL."""

from datetime import timedelta

import pytest
from django.db import DatabaseError, connection, transaction
from django.utils import timezone

from tests.factories import make_house, wanted
from tests.trimops.audit.old_trail import YEAR, grown, make_old
from trimops.audit.domain.cut_line import cut_line
from trimops.audit.heads_file import heads_file, kept_heads
from trimops.audit.models import AuditCut, AuditEntry, AuditSeal
from trimops.audit.models.audit_locks import put_all_on, take_all_off
from trimops.audit.selectors.verify_chain import verify_chain
from trimops.audit.services import cut_audit as cutting
from trimops.audit.services.cut_audit import TrailBroken, cut_audit
from trimops.audit.services.seal_audit import seal_audit
from trimops.errands.only_one import only_one


def cut(house, years=10):
    return cut_audit(scope=house.scope, years=years, at=timezone.now())


def verdict(house):
    return verify_chain(house.scope, list(kept_heads(heads_file())))


def counts(house):
    return [model.objects.within(house.scope).count() for model in (AuditEntry, AuditSeal)]


def test_what_is_older_goes_and_the_rest_is_still_proven(house, data_folder):
    old = grown(house)
    entries, seals = counts(house)
    assert cut(house) == old > 5
    assert counts(house) == [entries - old + 1, seals - old], "and an entry that tells of it"
    (row,) = AuditCut.objects.within(house.scope)
    assert (row.position, row.entries, row.years) == (old, old, 10)
    seal_audit(now=timezone.now())
    found = verdict(house)
    assert (found.faults, found.cut, found.sealed) == ([], old, seals - old + 1)
    assert AuditSeal.objects.within(house.scope).first().position == old + 1


def test_a_second_time_there_is_nothing_to_cut(house, data_folder):
    grown(house)
    assert cut(house) > 0
    assert (cut(house), AuditCut.objects.within(house.scope).count()) == (0, 1)


def test_what_is_younger_than_the_business_says_stays(house, data_folder):
    grown(house)
    assert cut(house, years=13) == 0


def test_much_goes_in_several_cuts_and_a_trail_of_old_entries_alone_goes_on_from_the_last(
    house, data_folder, monkeypatch
):
    monkeypatch.setattr(cutting, "MOST_AT_ONCE", 4)
    old = make_old(house, 12)
    assert cut(house) == old
    cuts = list(AuditCut.objects.within(house.scope).values_list("position", "entries"))
    assert sum(entries for _, entries in cuts) == cuts[-1][0] == old
    assert len(cuts) == -(-old // 4) > 1
    seal_audit(now=timezone.now())
    assert AuditSeal.objects.within(house.scope).first().position == old + 1
    assert verdict(house).faults == []


def test_the_entry_that_tells_of_a_cut_may_be_cut_later(house, data_folder):
    make_old(house, 20)
    cut_audit(scope=house.scope, years=10, at=timezone.now() - 8 * YEAR)
    make_old(house, 8)
    wanted(house.farm)
    seal_audit(now=timezone.now())
    assert verdict(house).faults == []
    assert cut(house, years=5) == 1
    assert verdict(house).faults == []


def test_another_business_keeps_its_own(house, data_folder):
    other = make_house("Beech & Elm")
    make_old(other, 12)
    before = counts(house)
    assert cut(other) > 0
    assert counts(house) == before


def test_a_part_that_does_not_follow_any_more_stays_to_be_looked_at(house, data_folder):
    grown(house)
    before = counts(house)
    take_all_off(connection)
    with connection.cursor() as cursor:
        cursor.execute("UPDATE audit_auditentry SET digest = 'x' WHERE business_id = %s", [house.business.pk])
    put_all_on(connection)
    with pytest.raises(TrailBroken, match="position 1"):
        cut(house)
    assert counts(house) == before


def test_where_another_process_is_at_it_nothing_is_done(house, data_folder):
    grown(house)
    with only_one(f"cut the audit trail of {house.business.pk}") as is_mine:
        assert is_mine
        assert cut(house) == 0


def refused(sql, *params):
    with pytest.raises(DatabaseError, match="only added to"), transaction.atomic(), connection.cursor() as c:
        c.execute(sql, params)
    return True


def write_cut(house, position, before):
    return AuditCut(
        business=house.business, position=position, chain="x", entries=position, before=before,
        years=3, cut_at=timezone.now(),
    ).save()  # fmt: skip


def test_a_cut_can_be_neither_changed_nor_taken_away_nor_reach_further_than_it_says(house, data_folder):
    old = grown(house)
    with pytest.raises(DatabaseError, match="only added to"), transaction.atomic():
        write_cut(house, old + 1, cut_line(timezone.now(), 3))
    cut(house)
    assert refused("UPDATE audit_auditcut SET entries = 1")
    assert refused("DELETE FROM audit_auditcut")
    assert refused("DELETE FROM audit_auditentry")
    assert refused("DELETE FROM audit_auditseal")


def test_a_seal_never_goes_before_its_entry_and_no_entry_beyond_a_cut(house, data_folder):
    old = grown(house)
    write_cut(house, 3, cut_line(timezone.now(), 3))
    assert refused("DELETE FROM audit_auditseal WHERE business_id = %s AND position = 1", house.business.pk)
    fourth = AuditSeal.objects.within(house.scope).get(position=4).entry_id
    assert refused("DELETE FROM audit_auditentry WHERE id = %s", fourth)
    assert old > 4


def test_the_database_lets_nothing_young_go_whatever_a_cut_says(house, data_folder):
    make_old(house, 2)
    write_cut(house, 3, timezone.now() + timedelta(days=1))
    first = AuditSeal.objects.within(house.scope).get(position=1).entry_id
    assert refused("DELETE FROM audit_auditentry WHERE id = %s", first)
