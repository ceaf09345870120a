import pytest

from tests.factories import NOON
from trimops.audit.heads_file import heads_file, kept_heads
from trimops.audit.selectors.audit_heads import Head
from trimops.audit.services.note_heads import note_heads


def test_a_line_a_business_and_day_and_none_where_nothing_is_new(data_folder):
    note_heads(heads={}, at=NOON)
    assert not heads_file().exists()
    note_heads(heads={2: Head(5, "b"), 1: Head(3, "a")}, at=NOON)
    note_heads(heads={1: Head(4, "c")}, at=NOON)
    assert [(kept.business, kept.position, kept.chain) for kept in kept_heads(heads_file())] == [
        (1, 3, "a"),
        (2, 5, "b"),
    ]


@pytest.mark.parametrize("line", ["no json", "[]", '{"at": "2026-03-02"}'])
def test_a_line_that_is_none_of_ours_is_told(data_folder, line):
    heads_file().write_text(f"{line}\n")
    with pytest.raises(ValueError, match="line 1"):
        list(kept_heads(heads_file()))
