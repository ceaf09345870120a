"""Whoever cuts a trail by hand, or changes what stands in the place of a cut, is found out."""

from datetime import timedelta
from io import StringIO

import pytest
from django.core.management import call_command
from django.db import connection
from django.utils import timezone

from tests.trimops.audit.old_trail import grown
from trimops.audit.heads_file import heads_file, kept_heads
from trimops.audit.models import AuditCut, AuditSeal
from trimops.audit.models.audit_locks import put_all_on, take_all_off
from trimops.audit.selectors.verify_chain import verify_chain
from trimops.audit.selectors.verify_cuts import verify_cuts
from trimops.audit.services.cut_audit import cut_audit
from trimops.audit.services.seal_audit import seal_audit


@pytest.fixture
def cut(house, data_folder):
    """A trail that was cut, sealed since, without a lock."""
    grown(house)
    cut_audit(scope=house.scope, years=10, at=timezone.now())
    seal_audit(now=timezone.now())
    take_all_off(connection)
    return house


def run(sql, *params):
    with connection.cursor() as cursor:
        cursor.execute(sql, params)


def words(house):
    return [fault for _, fault in verify_chain(house.scope, list(kept_heads(heads_file()))).faults]


def test_where_nothing_was_cut_a_trail_begins_at_its_first_entry(house):
    beginning = verify_cuts(house.scope, [])
    assert (beginning.position, beginning.last, beginning.faults) == (0, None, ())


@pytest.mark.parametrize(
    ("column", "value", "fault"),
    [
        ("chain", "0" * 64, "does not follow"),
        ("entries", 1, "a cut of 1 entries"),
        ("years", 3, "was changed"),
        ("years", 2, "younger than 2 years"),
        ("cut_at", timezone.now() - timedelta(days=1), "was changed"),
        ("before", timezone.now() - timedelta(days=1), "younger than 10 years"),
        ("position", 2, "no seal here"),
    ],
)
def test_a_changed_cut_is_found(cut, column, value, fault):
    assert words(cut) == []
    AuditCut.objects.within(cut.scope).update(**{column: value})
    assert any(fault in found for found in words(cut)), words(cut)


def test_a_cut_that_was_taken_away_is_found(cut):
    run("DELETE FROM audit_auditcut WHERE business_id = %s", cut.business.pk)
    assert words(cut)[0].startswith("no seal here")


def test_entries_that_went_behind_the_cuts_back_are_found(cut):
    first = AuditSeal.objects.within(cut.scope).first()
    run("DELETE FROM audit_auditseal WHERE id = %s", first.pk)
    run("DELETE FROM audit_auditentry WHERE id = %s", first.entry_id)
    assert words(cut)[0].startswith("no seal here")


def test_a_cut_made_by_hand_is_one_of_which_the_trail_knows_nothing(cut):
    first = AuditSeal.objects.within(cut.scope).first()
    run("DELETE FROM audit_auditseal WHERE id = %s", first.pk)
    run("DELETE FROM audit_auditentry WHERE id = %s", first.entry_id)
    last = AuditCut.objects.within(cut.scope).get()
    run(
        "INSERT INTO audit_auditcut (business_id, position, chain, entries, before, years, cut_at) "
        "SELECT business_id, %s, %s, 1, before, years, cut_at FROM audit_auditcut WHERE id = %s",
        first.position, first.chain, last.pk,
    )  # fmt: skip
    assert "a cut of which the trail knows nothing" in words(cut)


def test_a_cut_that_took_younger_entries_is_found_by_the_ends_that_were_kept(house, data_folder):
    old = grown(house)
    last = AuditSeal.objects.within(house.scope).last()
    take_all_off(connection)
    run("DELETE FROM audit_auditseal WHERE business_id = %s", house.business.pk)
    run("DELETE FROM audit_auditentry WHERE business_id = %s", house.business.pk)
    before = timezone.now() - timedelta(days=10 * 366 + 40)
    AuditCut(
        business=house.business, position=last.position, chain=last.chain, entries=last.position,
        before=before, years=10, cut_at=timezone.now(),
    ).save()  # fmt: skip
    seal_audit(now=timezone.now())
    kept = list(kept_heads(heads_file()))
    assert verify_chain(house.scope, []).faults == []
    assert kept[0].position == old
    late = [
        *kept,
        type(kept[0])((before + timedelta(days=400)).isoformat(), house.business.pk, old, kept[0].chain),
    ]
    assert "younger than it says" in verify_chain(house.scope, late).faults[0][1]


def test_another_chain_than_the_one_that_was_kept_at_the_cut_is_found(cut, data_folder):
    heads_file().write_text(
        heads_file().read_text().replace(AuditCut.objects.within(cut.scope).get().chain, "0" * 64)
    )
    assert any("made anew" in found for found in words(cut))


def test_the_command_tells_how_many_were_cut(cut):
    put_all_on(connection)
    out = StringIO()
    call_command("verify_audit", stdout=out, stderr=out)
    last = AuditCut.objects.within(cut.scope).get()
    assert f"{last.entries} entries from before {last.before:%Y-%m-%d} were cut" in out.getvalue()
