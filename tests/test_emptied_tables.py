"""What a test committed is gone after it, whatever hangs on what; what the tables were made with stays."""

import pytest
from django.apps import apps
from django.contrib.auth.models import Permission
from django.contrib.contenttypes.models import ContentType
from django.db import connection

from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from tests.emptied_tables import empty_tables
from tests.factories import NOON, blocked_foot, finish, make_house, make_prices, put_down, under_way


def rows():
    with connection.cursor() as cursor:
        counts = {}
        for model in apps.get_models(include_auto_created=True):
            cursor.execute(f"SELECT count(*) FROM {connection.ops.quote_name(model._meta.db_table)}")
            counts[model] = cursor.fetchone()[0]
    return counts


@pytest.mark.django_db(transaction=True)
def test_a_business_with_an_issued_invoice_is_gone_and_what_the_tables_were_made_with_stays():
    before = rows()
    house = make_house()
    make_prices(house.business)
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot())
    draft = draft_invoice(visit=finish(visit, house.trimmer), at=NOON)
    issue_invoice(invoice=draft, at=NOON, by=house.owner)
    assert sum(1 for model, count in rows().items() if count > before[model]) > 30

    empty_tables()

    assert rows() == before
    assert before[ContentType] > 50
    assert before[Permission] > 200
    assert sum(before.values()) == before[ContentType] + before[Permission]
