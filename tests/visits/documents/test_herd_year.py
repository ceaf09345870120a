"""The yearly paper as a farm gets it: read back with pypdf."""

from dataclasses import replace
from datetime import UTC, datetime
from io import BytesIO

import pytest
from pypdf import PdfReader

from tests.visits.documents.herd_pictures import AGAINST, HEAT, HEAT_FULL, KINDS, NEXT, OVER, WHICH
from trimops.paper.drawing import Drawing
from trimops.paper.letterhead import Letterhead
from visits.documents.herd.picture import draw
from visits.documents.herd_story_content import HOW_TO_READ, FigureRow, FigureTable, HerdPicture, HerdStory
from visits.documents.herd_year import herd_year

SENTENCES = {
    "Over time": "More cows have lesions since September 2025.",
    "Kinds": "New infectious cases came down from 31 to 12.",
    "Where": "Most cases are on the outer claw of the hind feet.",
    "Which cows": "Older cows have lesions more often than the herd.",
    "Next": "Half of the treated feet were treated again within 210 days.",
    "Others": "Too few cows to tell: 12 of 104.",
}
STORY = HerdStory(
    Letterhead("Skelderdale Foot Trimming", ("2 Mill Lane", "Skelder")),
    "High Thornbeck",
    2026,
    datetime(2026, 11, 30, 9, tzinfo=UTC),
    "High Thornbeck: more cows with lesions",
    "Herd of 118, 6 visits, 241 cows seen",
    tuple(
        HerdPicture(title, sentence, draw(content), f"Basis of {title}.")
        for (title, sentence), content in zip(
            SENTENCES.items(), (OVER, KINDS, HEAT, WHICH, NEXT, AGAINST), strict=True
        )
    ),
    (
        FigureTable(
            "Mobility", (FigureRow("Lame, 4 Mar 2026", "18 of 100 (12 to 26)", "110 of 118 scored"),)
        ),
        FigureTable("Cost", (FigureRow("Sole ulcer", "£3 to £6", "", "a paper of 2009"),), "Not converted."),
        FigureTable("Blocks and re-checks", ()),
    ),
    ("It is not a diagnosis.",),
)


def pages_of(story):
    return [page.extract_text() for page in PdfReader(BytesIO(herd_year(story))).pages]


def told(story):
    return " ".join(" ".join(pages_of(story)).split())


@pytest.fixture(scope="module")
def text():
    return told(STORY)


def test_six_pictures_and_the_tables_take_two_to_four_pages():
    assert 2 <= len(pages_of(STORY)) <= 4


def test_every_picture_stands_with_its_finding_and_what_it_rests_on(text):
    for title, sentence in SENTENCES.items():
        assert title in text
        assert sentence in text
        assert f"Basis of {title}." in text


def test_the_first_picture_is_at_the_top_of_the_first_page_however_tall_it_is():
    for pictures in (STORY.pictures, (*STORY.pictures[2:], *STORY.pictures[:2])):
        lines = pages_of(replace(STORY, pictures=pictures))[0].splitlines()
        there = [line for line in lines if line in SENTENCES]
        assert pictures[0].title in there[:2]


def test_room_left_on_a_page_is_filled_with_a_later_picture_that_fits():
    tall, low = STORY.pictures[2], STORY.pictures[0]
    assert len(pages_of(replace(STORY, pictures=(tall, tall, tall, tall, low, low), tables=()))) == 2


def test_tables_follow_on_the_page_where_the_pictures_end():
    short = tuple(HerdPicture(title, "Too few cows to tell.", None) for title in SENTENCES)
    (page,) = pages_of(replace(STORY, pictures=short))
    assert "Mobility" in page


def test_tables_have_their_basis_and_source_and_an_empty_one_says_so(text):
    assert "Lame, 4 Mar 2026 18 of 100 (12 to 26) 110 of 118 scored" in text
    assert "Source: a paper of 2009" in text
    assert "Not converted." in text
    assert "Nothing to tell yet." in text
    assert "It is not a diagnosis." in text


def test_the_same_story_gives_the_same_bytes_and_names_itself():
    pdf = herd_year(STORY)
    assert herd_year(STORY) == pdf
    metadata = PdfReader(BytesIO(pdf)).metadata
    assert metadata.title == STORY.answer
    assert metadata.author == "Skelderdale Foot Trimming"
    assert "High Thornbeck, 2026" in metadata.subject


def test_a_picture_without_a_drawing_is_its_sentence():
    story = replace(STORY, pictures=(HerdPicture("Over time", "Too few cows to tell.", None),), tables=())
    assert len(pages_of(story)) == 1
    assert "Too few cows to tell." in told(story)


def test_a_herd_without_anything_is_one_page():
    assert len(pages_of(replace(STORY, pictures=(), tables=()))) == 1


def test_it_says_once_what_the_line_through_a_mark_is(text):
    assert text.count(HOW_TO_READ) == 1
    assert HOW_TO_READ not in told(replace(STORY, pictures=()))


def test_endless_words_and_a_drawing_taller_than_a_page_still_come_out():
    tall = Drawing(86, 900, draw(HEAT_FULL).shapes, "tall")
    pictures = (HerdPicture("Tall", "word " * 900, tall, "basis"), *STORY.pictures[:2])
    assert len(pages_of(replace(STORY, pictures=pictures))) >= 3
