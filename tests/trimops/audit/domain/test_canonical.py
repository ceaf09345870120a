"""One text for one value."""

from datetime import UTC, date, datetime, time, timedelta, timezone
from decimal import Decimal
from uuid import UUID

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trimops.audit.domain.canonical import canonical


@pytest.mark.parametrize(
    ("value", "text"),
    [
        ({"b": 1, "a": None}, '{"a":null,"b":1}'),
        (Decimal("5.00"), '"5.00"'),
        (Decimal("1E+2"), '"100"'),
        (datetime(2026, 3, 2, 14, tzinfo=timezone(timedelta(hours=2))), '"2026-03-02T12:00:00+00:00"'),
        (datetime(2026, 3, 2, 12, tzinfo=UTC), '"2026-03-02T12:00:00+00:00"'),
        (date(2026, 3, 2), '"2026-03-02"'),
        (time(6, 30), '"06:30:00"'),
        (UUID(int=1), '"00000000-0000-0000-0000-000000000001"'),
        ([True, "Brücke", 'say "moo"'], '[true,"Brücke","say \\"moo\\""]'),
        ({"z": {"y": [Decimal("0.1")]}}, '{"z":{"y":["0.1"]}}'),
    ],
)
def test_each_kind_of_value_has_its_text(value, text):
    assert canonical(value) == text


def test_what_has_no_text_of_its_own_is_refused():
    with pytest.raises(TypeError, match="bytes"):
        canonical({"pdf": b"%PDF"})


@given(st.dictionaries(st.text(max_size=5), st.integers() | st.text(max_size=5) | st.none(), max_size=6))
def test_the_order_in_which_a_row_was_read_changes_nothing(row):
    assert canonical(row) == canonical(dict(reversed(row.items())))
