"""The bench of reports in its smallest form: it draws what it says it draws."""

from tests.bench.visits.bench_reports import bare_tables, measure, reports
from tests.visits.documents.test_visit_report import pages_of


def test_the_reports_differ_and_the_bare_tables_have_as_many_pages():
    first, second = reports(2)
    assert {cow.number for cow in first.cows} != {cow.number for cow in second.cows}
    assert pages_of(bare_tables(2, 0)) == 2


def test_pages_and_seconds_are_those_of_what_was_drawn():
    pages, own, bare = measure(2)
    assert pages == 4
    assert own > 0 < bare
