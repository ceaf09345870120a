import json
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal
from zoneinfo import ZoneInfo

import pytest

from visits.documents.stored_content import ContentUnreadable, from_stored, to_stored
from visits.documents.visit_report import visit_report
from visits.documents.visit_report_content import VisitReport
from visits.domain.feet import Foot


@dataclass(frozen=True)
class Inner:
    foot: Foot | None = None
    days: tuple[date, ...] = ()


@dataclass(frozen=True)
class Outer:
    name: str
    at: datetime
    amount: Decimal
    counts: tuple[int | None, ...] = ()
    inner: Inner = Inner()


AT = datetime(2026, 7, 1, 9, 30, tzinfo=ZoneInfo("Europe/London"))
FULL = Outer("x", AT, Decimal("1.50"), (1, None), Inner(Foot.LEFT_HIND, (date(2026, 7, 2),)))


def through_json(value):
    return json.loads(json.dumps(to_stored(value)))


@pytest.mark.parametrize("value", [FULL, Outer("", AT, Decimal(0))])
def test_what_is_stored_comes_back_the_same(value):
    assert from_stored(Outer, through_json(value)) == value


def test_an_hour_comes_back_as_the_hour_on_the_wall_where_it_was_written():
    assert from_stored(Outer, through_json(FULL)).at.hour == 9


def test_a_report_comes_back_and_is_drawn_to_the_same_bytes(make_report):
    report = make_report(30)
    again = from_stored(VisitReport, through_json(report))
    assert again == report
    assert visit_report(again) == visit_report(report)


def test_a_field_that_is_gone_is_left_out_and_a_new_one_has_its_default():
    older = through_json(FULL)
    del older["inner"]
    assert from_stored(Outer, {**older, "no_longer": 1}).inner == Inner()


@pytest.mark.parametrize(
    ("field", "value"),
    [("name", 3), ("at", "noon"), ("amount", "much"), ("counts", "12"), ("inner", []), ("counts", [True])],
)
def test_what_does_not_fit_is_refused(field, value):
    with pytest.raises(ContentUnreadable, match="Outer"):
        from_stored(Outer, {**through_json(FULL), field: value})


def test_what_must_be_there_and_is_not_is_refused():
    with pytest.raises(ContentUnreadable):
        from_stored(Outer, {"name": "x"})


def test_bytes_have_no_place_in_a_content():
    with pytest.raises(TypeError, match="bytes"):
        to_stored(b"picture")
