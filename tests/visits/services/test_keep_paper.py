import hashlib

import pytest
from django.core.exceptions import ValidationError

from tests.factories import NOON, finished, make_house
from visits.documents.stored_content import from_stored
from visits.documents.visit_report_content import VisitReport
from visits.models import IssuedReport
from visits.selectors.report_content import report_content
from visits.services.keep_paper import keep_paper

pytestmark = pytest.mark.django_db


@pytest.fixture
def visit():
    house = make_house()
    return finished(house.farm, house.van)


def keep(visit, content, pdf=b"%PDF-"):
    row = IssuedReport(business_id=visit.business_id, visit=visit)
    return keep_paper(row=row, content=content, pdf=pdf, at=NOON, by=None)


def test_what_was_drawn_is_kept_with_its_hash_and_what_it_says(visit):
    content = report_content(visit, NOON)
    kept = keep(visit, content)
    row = IssuedReport.objects.within(visit.scope).get(pk=kept.pk)
    assert (bytes(row.pdf), row.sha256) == (b"%PDF-", hashlib.sha256(b"%PDF-").hexdigest())
    assert (row.version, row.changed, row.made_at) == (1, "", NOON)
    assert from_stored(VisitReport, row.content) == content


def test_a_version_is_not_kept_twice(visit):
    content = report_content(visit, NOON)
    keep(visit, content)
    with pytest.raises(ValidationError):
        keep(visit, content)
