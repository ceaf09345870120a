import pytest

from trimops.paper.wording import clean, markup


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Hill & Dale <b>", "Hill &amp; Dale &lt;b&gt;"),
        ("one\r\ntwo", "one<br/>two"),
        ("bell\x07 and \x00nul", "bell and nul"),
        ("W\u0302yl", "Ŵyl"),
        ("Ελ", '<font name="StandIn">Ελ</font>'),
        ("", ""),
    ],
)
def test_text_stands_for_itself_whatever_is_in_it(text, expected):
    assert markup(text) == expected


def test_odd_spaces_and_hyphens_become_plain_ones():
    assert clean("10\u202fkm re\u2011check soft\u00adhyphen") == "10\u00a0km re-check softhyphen"
