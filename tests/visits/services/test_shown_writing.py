"""The writing that shows says what it said when it was sent."""

import pytest

from tests.visits.api.phone import blocked, cow_content
from visits.domain.read_content import read_content
from visits.domain.writing_content import content_json
from visits.models import CrushWriting
from visits.services.shown_writing import ShownWriting


def test_its_content_is_read_back_from_what_is_kept():
    content = read_content("cow", cow_content(7, blocked(), note="Quiet"), faults := [])
    assert faults == []
    row = CrushWriting(kind="cow", content=content_json(content), cow_id=7)
    writing = ShownWriting(row, None, None, 1, None)
    assert (writing.content(), writing.cow_id) == (content, 7)


def test_a_wash_down_is_about_no_cow():
    with pytest.raises(ValueError, match="no cow"):
        _ = ShownWriting(CrushWriting(kind="wash"), None, None, 1, None).cow_id
