import pytest
from reportlab.platypus import Paragraph

from trimops.paper.set_text import set_text
from trimops.paper.styles import lead_words, style, words
from trimops.paper.typefaces import BOLD
from trimops.paper.wording import markup


def lines_of(paragraph, width=120):
    paragraph.wrap(width, 1000)
    lines = [
        line[1] if paragraph.blPara.kind == 0 else [word.text for word in line.words]
        for line in paragraph.blPara.lines
    ]
    return paragraph.height, ["".join(line).replace(" ", "") for line in lines]


@pytest.mark.parametrize(
    "text",
    [
        "",
        "one",
        "  outer claw,   where sole meets heel (4) and some more words to fill the line ",
        "a < b & c > d <b>not bold</b>",
        "Łąka Ελλάδα Gwern-y-Ŵyl",
        "first line\nsecond line",
        "x" * 80,
    ],
)
def test_plain_words_are_set_as_the_parser_would_set_them(text):
    parsed = Paragraph(markup(text), style())
    assert lines_of(words(text)) == lines_of(parsed)


@pytest.mark.parametrize(
    ("lead", "text"), [("Cow 9,", "left hind: dead toe"), ("By Tue", ""), ("", "all plain")]
)
def test_a_bold_lead_is_set_as_the_parser_would_set_it(lead, text):
    bold = f'<font name="{BOLD}">{markup(lead, BOLD)}</font> ' if lead else ""
    parsed = Paragraph(bold + markup(text), style())
    assert lines_of(lead_words(lead, text)) == lines_of(parsed)


def test_lines_are_broken_once_for_a_width_and_anew_for_another():
    paragraph = set_text([("some words that take more than a line or two", False)], style())
    paragraph.wrap(100, 1000)
    lines = paragraph.blPara
    paragraph.wrap(100, 500)
    assert paragraph.blPara is lines
    assert paragraph.wrap(60, 1000)[1] > paragraph.style.leading * 2
    assert paragraph.blPara is not lines


def test_a_paragraph_that_could_not_be_split_is_set_again():
    paragraph = words("word " * 60)
    paragraph.wrap(100, 1000)
    assert paragraph.split(100, 1) == []
    assert paragraph.wrap(100, 1000)[1] > 100
