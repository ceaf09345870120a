"""Issuing freezes every column but what was paid."""

import pytest

from invoicing.domain.frozen_columns import frozen_columns


@pytest.mark.parametrize(
    ("columns", "expected"),
    [
        (["id", "number", "settled", "gross", "is_open"], ["id", "number", "gross"]),
        (["settled", "is_open"], []),
        (["a_column_of_tomorrow"], ["a_column_of_tomorrow"]),
    ],
)
def test_only_what_was_paid_stays_free(columns, expected):
    assert frozen_columns(columns) == expected
