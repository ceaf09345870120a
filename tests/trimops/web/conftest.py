"""A clock for what is counted within a window."""

import pytest
from django.core.cache import cache

from trimops.web import counted


@pytest.fixture
def same_window(monkeypatch):
    """All within one window, whatever the clock says; 1,800,000,010 is ten seconds into a minute and an hour."""
    cache.clear()
    monkeypatch.setattr(counted.time, "time", lambda: 1_800_000_010.0)
    yield
    cache.clear()
