import pytest

from visits.management.one_line import one_line


@pytest.mark.parametrize(
    ("message", "line"),
    [
        ("plain: farm Ü, 20 min – fine", "plain: farm Ü, 20 min – fine"),
        ("a\nb\r\tc\0", "a\\nb\\r\\tc\\x00"),
        ("\u2028\x85\ud800", "\\u2028\\x85\\ud800"),
    ],
)
def test_a_message_is_one_printable_line(message, line):
    assert one_line(message) == line
    assert len(one_line(message).splitlines()) == 1
