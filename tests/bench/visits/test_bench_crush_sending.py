"""The bench of a day's sending in a small form; nothing is timed."""

import pytest

from tests.bench.visits.bench_crush_sending import measure
from tests.bench.visits.crush_day import TABLES, CrushDay


@pytest.mark.django_db
def test_all_that_was_sent_is_kept_and_inserted_once_more():
    figures = measure(cows=30, photos=3)
    assert (figures.cows, figures.photos, figures.kept) == (30, 3, 30)
    assert figures.rows > 30 * 4


@pytest.mark.django_db
def test_the_plain_insert_leaves_the_very_same_rows():
    day = CrushDay(cows=30, photos=3, photo_bytes=100, at_once=20)
    day.send_cows()
    day.send_photos()
    before = {model: list(day._all(model).order_by("pk").values()) for model in TABLES}
    day.plain_insert()
    assert {model: list(day._all(model).order_by("pk").values()) for model in TABLES} == before
