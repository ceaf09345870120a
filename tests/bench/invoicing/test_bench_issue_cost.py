"""The bench of issuing in its smallest form: it issues what it counts, and the bare page is one."""

from io import BytesIO

import pytest
from pypdf import PdfReader

from invoicing.models import Invoice
from tests.bench.invoicing.bench_issue_cost import Cost, bare_page, measure
from tests.bench.invoicing.finished_visits import finished_visits


def test_the_bare_page_is_one():
    assert len(PdfReader(BytesIO(bare_page(0))).pages) == 1


def test_it_issues_each_visit_and_times_every_part(db):
    house, visits = finished_visits(2)
    cost = measure(house, visits)
    assert Invoice.objects.within(house.scope).issued().count() == 2
    parts = (cost.draft, cost.issue, cost.page, cost.cii, cost.ubl, cost.inside)
    assert all(len(part) == 2 and min(part) > 0 for part in parts)


def test_medians_are_added():
    cost = Cost([1, 3, 2], [4, 4, 9], [1], [2], [3], [4])
    assert (cost.own(), cost.bare("page", "cii")) == (pytest.approx(6), pytest.approx(3))
