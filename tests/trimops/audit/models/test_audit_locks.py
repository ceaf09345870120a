"""The locks on the trail, as a migration puts them on, and the one way to lift those on deleting."""

import pytest
from django.db import DatabaseError, connection, transaction
from django.utils import timezone

from trimops.audit.models import AuditSeal
from trimops.audit.models.audit_locks import (
    audit_locks,
    deleting_allowed,
    missing_audit_locks,
    put_all_on,
    take_all_off,
)
from trimops.audit.services.seal_audit import seal_audit

NAMES = [lock.name for lock in audit_locks("sqlite")]


@pytest.fixture
def locked(house, data_folder):
    seal_audit(now=timezone.now())
    put_all_on(connection)
    return house


def refused(sql):
    with pytest.raises(DatabaseError, match="only added to"), transaction.atomic(), connection.cursor() as c:
        c.execute(sql)
    return True


def test_both_tables_can_neither_be_changed_nor_emptied(locked):
    assert missing_audit_locks(connection) == []
    for table, column in (("audit_auditentry", "via"), ("audit_auditseal", "chain")):
        assert refused(f"UPDATE {table} SET {column} = 'x'")
        assert refused(f"DELETE FROM {table}")


def test_where_a_business_goes_as_a_whole_deleting_is_let_through_and_locked_again(locked):
    with deleting_allowed(connection):
        assert refused("UPDATE audit_auditseal SET chain = 'x'")
        with connection.cursor() as cursor:
            cursor.execute("DELETE FROM audit_auditseal WHERE business_id = %s", [locked.business.pk])
    assert not AuditSeal.objects.within(locked.scope).exists()
    assert missing_audit_locks(connection) == []


def test_what_did_not_stand_is_not_put_on(locked):
    take_all_off(connection)
    assert missing_audit_locks(connection) == NAMES
    with deleting_allowed(connection):
        pass
    assert missing_audit_locks(connection) == NAMES
