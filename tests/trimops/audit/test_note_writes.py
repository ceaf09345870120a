"""What an entry says: who, from where, what it was and what it is."""

import json
from datetime import UTC, datetime

import pytest
from django.db import DatabaseError, connection, transaction

from farms.models import Contact, Farm
from farms.services.save_farm import save_farm
from tests.factories import NOON, make_house, make_prices, wanted
from trimops.accounts.models import Membership
from trimops.accounts.roles import Role
from trimops.audit.domain.digests import content_digest, entry_digest
from trimops.audit.domain.entry_kinds import EntryKind
from trimops.audit.models import AuditEntry
from trimops.audit.unaudited import unaudited
from trimops.outbox.models import WebhookAddress
from trimops.watch.doing import Doing, done_by

pytestmark = pytest.mark.django_db
OWNER = Doing(by=None, via="POST farm_edit", seen_from="192.0.2.7", session="ab12", request="r-1")


@pytest.fixture
def house():
    return make_house()


def entries(house, what, **more):
    return list(AuditEntry.objects.within(house.scope).filter(what=what, **more).order_by("id"))


def test_an_entry_says_who_when_from_where_before_and_after(house):
    begun = datetime.now(UTC)
    farm = house.farm
    farm.phone = "01632 960001"
    with done_by(Doing(house.owner.pk, "POST farm_edit", "192.0.2.7", "ab12", "r-1")):
        save_farm(farm=farm, at=NOON, by=house.owner)
    entry = entries(house, "farms.farm")[-1]
    assert (entry.by, entry.via, entry.seen_from) == (house.owner, "POST farm_edit", "192.0.2.7")
    assert (entry.session, entry.request, entry.kind) == ("ab12", "r-1", EntryKind.CHANGED)
    assert (entry.row_id, json.loads(entry.before)) == (farm.pk, {"phone": ""})
    assert json.loads(entry.after) == {"phone": "01632 960001"}
    assert begun <= entry.at <= datetime.now(UTC)


def test_its_hashes_can_be_worked_out_from_what_is_read_back(house):
    make_prices(house.business)
    for entry in AuditEntry.objects.within(house.scope):
        assert content_digest(entry.held) == entry.content
        assert entry_digest(entry.facts) == entry.digest


def test_two_entries_that_hold_the_same_have_different_hashes(house):
    first, second = (entry.content for entry in entries(house, "farms.milking")[:2])
    assert first != second


def test_a_row_says_what_it_hangs_on(house):
    visit = wanted(house.farm)
    assert entries(house, "visits.visit")[0].under == f"farms.farm:{house.farm.pk}"
    make_prices(house.business)
    price = entries(house, "invoicing.price")[0]
    assert price.under.startswith("invoicing.pricelist:")
    access = entries(house, "farms.farmaccess")[0]
    assert access.under == f"accounts.membership:{house.memberships[Role.FARM].pk}"
    assert access.beside == f"farms.farm:{house.farm.pk}"
    assert visit.pk


def test_saving_what_is_unchanged_leaves_no_entry(house):
    before = AuditEntry.objects.within(house.scope).count()
    house.farm.save()
    Farm.objects.within(house.scope).update(name=house.farm.name)
    assert AuditEntry.objects.within(house.scope).count() == before


def test_what_is_only_housekeeping_leaves_no_entry(house):
    before = AuditEntry.objects.within(house.scope).count()
    Farm.objects.within(house.scope).update(shown_since=NOON)
    assert AuditEntry.objects.within(house.scope).count() == before


def test_a_secret_is_told_as_changed_and_never_written_down(house):
    words = {"name": "Office", "url": "https://office.example/x", "made_at": NOON, "made_by": house.owner}
    hook = WebhookAddress.objects.create(business=house.business, secret="whsec_open", **words)
    hook.secret = "whsec_other"
    hook.save()
    added, changed = entries(house, "outbox.webhookaddress")
    assert "whsec" not in added.after + changed.before + changed.after
    assert json.loads(changed.after) == {"secret": "(changed)"}


def test_members_and_the_business_itself_are_in_the_trail(house):
    house.business.phone = "01632 960002"
    house.business.save()
    Membership.objects.filter(business=house.business).update(ended_at=NOON)
    assert json.loads(entries(house, "accounts.business")[-1].after) == {"phone": "01632 960002"}
    assert len(entries(house, "accounts.membership", kind=EntryKind.CHANGED)) == len(Role)


def test_what_was_deleted_stands_there_as_it_was(house):
    contact = Contact.objects.create(business=house.business, farm=house.farm, name="Ida", part="herd")
    contact.delete()
    added, gone = entries(house, "farms.contact")
    assert (gone.kind, gone.after) == (EntryKind.TAKEN_AWAY, "")
    assert json.loads(gone.before) == json.loads(added.after)


def test_what_was_rolled_back_is_not_in_the_trail(house):
    before = AuditEntry.objects.within(house.scope).count()
    with transaction.atomic():
        wanted(house.farm)
        transaction.set_rollback(True)
    assert AuditEntry.objects.within(house.scope).count() == before


def test_the_way_round_writes_nothing_and_wants_a_reason(house):
    before = AuditEntry.objects.within(house.scope).count()
    with unaudited("the test asks"):
        wanted(house.farm)
    assert AuditEntry.objects.within(house.scope).count() == before
    with pytest.raises(ValueError, match="reason"), unaudited(" "):
        pass


def test_a_change_costs_two_statements_more_and_a_new_row_one(house, django_assert_num_queries):
    contact = Contact(business=house.business, farm=house.farm, name="Ida", part="herd")
    with django_assert_num_queries(2):
        contact.save(force_insert=True)
    contact.name = "Ina"
    with django_assert_num_queries(3):
        contact.save(update_fields=["name"])


@pytest.mark.parametrize("column", ["after", "digest", "via", "by_id", "at"])
def test_the_database_refuses_to_change_an_entry(house, column):
    value = {"by_id": house.trimmer.pk, "at": NOON}.get(column, "x")
    with pytest.raises(DatabaseError, match="only added to"), transaction.atomic(), connection.cursor() as c:
        c.execute(f"UPDATE audit_auditentry SET {column} = %s", [value])
