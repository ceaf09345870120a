from zoneinfo import ZoneInfo

import pytest


@pytest.fixture
def london():
    return ZoneInfo("Europe/London")
