"""Whoever changes the trail behind the program's back is found out. The locks are taken off first, as he would."""

from datetime import timedelta
from io import StringIO

import pytest
from django.core.management import call_command
from django.db import connection
from django.utils import timezone

from tests.factories import make_prices, wanted
from trimops.audit.domain.digests import content_digest, entry_digest
from trimops.audit.heads_file import heads_file, kept_heads
from trimops.audit.models import AuditEntry, AuditSeal
from trimops.audit.models.audit_locks import missing_audit_locks, put_all_on, take_all_off
from trimops.audit.selectors.verify_chain import verify_chain
from trimops.audit.services.seal_audit import seal_audit


@pytest.fixture
def sealed(house, data_folder):
    """A business with some twenty sealed entries, and no lock on the tables."""
    make_prices(house.business)
    seal_audit(now=timezone.now())
    take_all_off(connection)
    if connection.vendor == "sqlite":
        run("PRAGMA defer_foreign_keys = ON")
    return house


def run(sql, *params):
    with connection.cursor() as cursor:
        cursor.execute(sql, params)


def faults(house, *, held=True):
    kept = list(kept_heads(heads_file())) if held else []
    return verify_chain(house.scope, kept).faults


def entry_at(house, position):
    return AuditSeal.objects.within(house.scope).get(position=position).entry_id


def test_a_trail_that_nobody_touched_is_whole(sealed):
    wanted(sealed.farm)
    verdict = verify_chain(sealed.scope, list(kept_heads(heads_file())))
    assert verdict.faults == []
    assert verdict.sealed == AuditSeal.objects.within(sealed.scope).count()
    assert verdict.waiting == AuditEntry.objects.within(sealed.scope).filter(seal=None).count() > 0


@pytest.mark.parametrize("column", ["before", "after", "via", "kind", "under", "request", "seen_from"])
def test_a_changed_entry_is_found_at_its_position(sealed, column):
    run(f"UPDATE audit_auditentry SET {column} = 'x' WHERE id = %s", entry_at(sealed, 4))
    assert [position for position, _ in faults(sealed)] == [4]


def test_a_changed_entry_with_its_hashes_made_anew_is_found(sealed):
    entry = AuditEntry.objects.within(sealed.scope).get(pk=entry_at(sealed, 4))
    entry.after = '{"unit_price":"1"}'
    entry.content = content_digest(entry.held)
    entry.digest = entry_digest(entry.facts)
    entry.save()
    assert [position for position, _ in faults(sealed)] == [4]


def test_an_entry_taken_out_is_found(sealed):
    run("DELETE FROM audit_auditseal WHERE position = 4 AND business_id = %s", sealed.business.pk)
    assert faults(sealed)[0] == (4, "no seal here; the next one is 5")


def test_two_entries_that_changed_places_are_found(sealed):
    one, two = entry_at(sealed, 3), entry_at(sealed, 6)
    run("UPDATE audit_auditseal SET entry_id = %s WHERE entry_id = %s", -1, one)
    run("UPDATE audit_auditseal SET entry_id = %s WHERE entry_id = %s", one, two)
    run("UPDATE audit_auditseal SET entry_id = %s WHERE entry_id = %s", two, -1)
    assert [position for position, _ in faults(sealed)] == [3, 6]


def test_the_end_cut_off_is_found_by_what_was_kept_elsewhere(sealed):
    last = AuditSeal.objects.within(sealed.scope).last()
    run("DELETE FROM audit_auditseal WHERE id = %s", last.pk)
    run("DELETE FROM audit_auditentry WHERE id = %s", last.entry_id)
    assert faults(sealed, held=False) == []
    ((position, words),) = faults(sealed)
    assert position == last.position
    assert "cut off" in words


def test_a_whole_chain_made_anew_is_found_by_what_was_kept_elsewhere(sealed, data_folder):
    kept = heads_file().read_text()
    run("DELETE FROM audit_auditseal")
    run("DELETE FROM audit_auditentry WHERE id = %s", AuditEntry.objects.within(sealed.scope).last().pk)
    wanted(sealed.farm)
    seal_audit(now=timezone.now())
    heads_file().write_text(kept)
    assert faults(sealed, held=False) == []
    assert "made anew" in faults(sealed)[0][1]


def test_an_entry_put_in_with_an_old_date_is_found(sealed):
    entry = AuditEntry.objects.within(sealed.scope).first()
    entry.pk, entry.at = None, timezone.now() - timedelta(days=40)
    entry.save()
    seal_audit(now=timezone.now())
    assert any("changed" in words for _, words in faults(sealed))


def test_the_command_says_where_and_ends_with_one(sealed):
    put_all_on(connection)
    out, err = StringIO(), StringIO()
    call_command("verify_audit", stdout=out, stderr=err)
    assert f"business {sealed.business.pk}: " in out.getvalue()
    assert err.getvalue() == ""
    take_all_off(connection)
    run("UPDATE audit_auditentry SET via = 'x' WHERE id = %s", entry_at(sealed, 4))
    with pytest.raises(SystemExit):
        call_command("verify_audit", business=sealed.business.pk, stdout=out, stderr=err)
    assert "position 4: entry" in err.getvalue()
    assert "does not bear the lock audit_entry_stays" in err.getvalue()
    assert missing_audit_locks(connection)
