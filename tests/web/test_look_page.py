from pathlib import Path

import pytest
from django.conf import settings
from django.contrib.auth.models import AnonymousUser
from django.test import RequestFactory

from trimops.web.look_sample import look_page


@pytest.fixture
def page():
    request = RequestFactory().get("/look/")
    request.user = AnonymousUser()
    return look_page(request).content.decode()


@pytest.mark.parametrize(
    "piece",
    [
        *("mark-done", "mark-due", "mark-urgent", "mark-planned", "mark-plain"),
        *("act-main", "act-stop", "facts", "lines", "tally", "days", "beside", "warn", "empty", "mend"),
        *("sheet", "row-total", "turn", "wait", "drawing", "asked", "field-wrong", "trail"),
    ],
)
def test_the_look_page_shows_every_piece_and_the_stylesheet_knows_it(page, piece):
    css = (Path(settings.BASE_DIR) / "trimops/web/static/trimops/trimops.css").read_text()
    assert f'"{piece}' in page or f" {piece}" in page
    assert f".{piece}" in css


def test_times_on_the_look_page_are_the_business_s_own(page):
    assert "09:30 to 11:45" in page
