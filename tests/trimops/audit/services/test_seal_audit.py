"""What was written is taken into the chain, once and in order."""

from datetime import timedelta

from django.utils import timezone

from tests.factories import make_house, wanted
from trimops.audit.domain.digests import first_link, next_link
from trimops.audit.heads_file import heads_file, kept_heads
from trimops.audit.models import AuditEntry, AuditSeal
from trimops.audit.selectors.audit_heads import head_of
from trimops.audit.selectors.verify_chain import verify_chain
from trimops.audit.services.seal_audit import seal_audit
from trimops.errands.only_one import only_one


def test_each_entry_is_sealed_once_in_the_order_of_writing(house, data_folder):
    now = timezone.now()
    count = AuditEntry.objects.within(house.scope).count()
    assert seal_audit(now=now) == count
    assert seal_audit(now=now) == 0
    wanted(house.farm)
    assert seal_audit(now=now) >= 1
    seals = list(AuditSeal.objects.within(house.scope).select_related("entry"))
    assert [seal.position for seal in seals] == list(range(1, len(seals) + 1))
    chain = first_link(house.business.pk)
    for seal in seals:
        chain = next_link(chain, seal.entry.digest)
        assert seal.chain == chain
    assert head_of(house.scope).chain == chain


def test_each_business_has_a_chain_of_its_own(house, data_folder):
    other = make_house("Beech & Elm")
    seal_audit(now=timezone.now(), business_id=other.business.pk)
    assert head_of(house.scope) is None
    assert head_of(other.scope).position > 1
    seal_audit(now=timezone.now())
    assert AuditSeal.objects.within(house.scope).first().position == 1


def test_the_end_is_noted_outside_the_database_once_a_day(house, data_folder):
    now = timezone.now()
    seal_audit(now=now)
    first = head_of(house.scope)
    wanted(house.farm)
    seal_audit(now=now)
    wanted(house.farm)
    seal_audit(now=now + timedelta(days=1))
    kept = list(kept_heads(heads_file()))
    assert [(head.business, head.position, head.chain) for head in kept] == [
        (house.business.pk, first.position, first.chain),
        (house.business.pk, *vars(head_of(house.scope)).values()),
    ]


def test_where_another_process_is_at_it_nothing_is_done(house, data_folder):
    with only_one("seal the audit trail") as is_mine:
        assert is_mine
        assert seal_audit(now=timezone.now()) == 0


def test_what_was_written_just_before_a_week_without_power_is_sealed_after_it(house, data_folder):
    now = timezone.now()
    seal_audit(now=now)
    wanted(house.farm)
    assert seal_audit(now=now + timedelta(days=7)) >= 1
    assert verify_chain(house.scope, list(kept_heads(heads_file()))).faults == []
