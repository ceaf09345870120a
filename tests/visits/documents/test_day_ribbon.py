from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from tests.visits.documents.ribbon_days import FULL_DAY
from visits.documents.day_ribbon import PHONE_WIDTH, day_ribbon


def test_it_runs_across_on_a_desk_and_down_on_a_phone():
    desk, phone = day_ribbon(FULL_DAY, 250), day_ribbon(FULL_DAY, PHONE_WIDTH)
    assert desk.width > desk.height
    assert phone.height > phone.width
    assert desk.title == phone.title
    assert desk.description == phone.description


def test_the_phones_drawing_fits_360_pixels_with_its_margins():
    assert PHONE_WIDTH * 96 / 25.4 <= 360 - 2 * 15


def test_a_day_without_length_or_zone_is_refused():
    with pytest.raises(ValueError, match="before"):
        day_ribbon(replace(FULL_DAY, ends=FULL_DAY.begins))
    with pytest.raises(ValueError, match="zone"):
        day_ribbon(replace(FULL_DAY, begins=datetime(2026, 12, 1), ends=datetime(2026, 12, 1) + timedelta(1)))  # noqa: DTZ001
