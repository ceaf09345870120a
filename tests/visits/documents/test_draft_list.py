from dataclasses import replace
from datetime import datetime
from io import BytesIO

import pytest
from pypdf import PdfReader

from visits.documents.draft_list import draft_list, draft_title
from visits.documents.draft_list_content import DraftCow, DraftGroup, StruckCow


def test_the_title_is_the_answer(make_draft):
    assert draft_title(make_draft(28)) == "Bring 28 cows, Tuesday 1 December 2026, 09:40"
    assert draft_title(make_draft(1)) == "Bring 1 cow, Tuesday 1 December 2026, 09:40"


def test_cows_stand_by_need_with_why_and_what_to_mind(make_draft, text_of):
    text = text_of(draft_list(make_draft(28)))
    assert (
        text.index("Lame now: 2 cows")
        < text.index("Blocks and re-checks: 3 cows")
        < text.index("Trim due: 23 cows")
    )
    assert "214 lame: 3 of 0-3, since 28 Nov" in text
    assert "131 dry-off in 6 days calves in 20 days: ask the vet first" in text


def test_how_to_get_ready_stands_before_the_cows(make_draft, text_of):
    text = text_of(draft_list(make_draft(28)))
    assert (
        text.index("Ready before we come")
        < text.index("Water for washing, 13 A power, light.")
        < text.index("Lame now")
    )


def test_when_the_van_likely_comes_is_said_where_it_is_known(make_draft, text_of):
    draft = make_draft(28, trimmer="Van 1")
    assert "Van 1 arrives at 09:40." in text_of(draft_list(draft))
    likely = (draft.arrive.replace(minute=25), draft.arrive.replace(hour=10, minute=5))
    told = text_of(draft_list(replace(draft, likely=likely)))
    assert "Van 1 arrives at 09:40, likely between 09:25 and 10:05." in told


def test_what_is_left_for_next_time_is_said(make_draft, text_of):
    text = text_of(draft_list(make_draft(28)))
    assert "Left for next time: 2 cows 322: last trim 148 days ago 59: 72 days in milk" in text
    assert "Left for next time" not in text_of(draft_list(make_draft(28, left_for_next=())))


def test_of_many_that_are_left_the_first_are_told_and_all_are_counted(make_draft, text_of):
    text = text_of(draft_list(make_draft(28, left_count=37)))
    assert "Left for next time: 37 cows 322: last trim 148 days ago 59: 72 days in milk And 35 more." in text


def test_who_must_not_be_brought_is_said_with_why_and_by_whom(make_draft, text_of):
    struck = (StruckCow("412", "sold on Friday", "J. Marsden"), StruckCow("77", "", "J. Marsden"))
    text = text_of(draft_list(make_draft(28, struck=struck)))
    assert "Do not bring: 2 cows 412: sold on Friday, struck by J. Marsden 77: struck by J. Marsden" in text


def test_the_numbers_stand_once_more_in_order_for_the_gate(make_draft, text_of):
    assert "By number 87, 131, 214, 302, 303, 304," in text_of(draft_list(make_draft(28)))
    assert "By number" not in text_of(draft_list(make_draft(1)))


def test_without_an_hour_none_is_told(make_draft, text_of):
    draft = make_draft(28, arrive=None, trimmer="Van 1")
    assert draft_title(draft) == "Bring 28 cows, from Tuesday 1 December 2026, no hour yet"
    assert "arrives at" not in text_of(draft_list(draft))


def test_that_the_list_is_longer_than_its_time_stands_at_the_top(make_draft, text_of):
    text = text_of(draft_list(make_draft(28, time_note="3 cows more than the time allows.")))
    assert text.index("3 cows more than the time allows.") < text.index("Ready before we come")


def test_an_empty_list_asks_which_cows_are_wanted(make_draft, text_of):
    text = text_of(draft_list(make_draft(0, groups=())))
    assert "No cows on the list yet" in text
    assert "Tell us which cows you want seen." in text


@pytest.mark.parametrize(("cows", "pages"), [(1, 1), (28, 2), (120, 6)])
def test_it_takes_so_many_pages(make_draft, cows, pages):
    assert len(PdfReader(BytesIO(draft_list(make_draft(cows)))).pages) <= pages


def test_type_is_large_enough_for_a_wall(make_draft):
    sizes = []
    page = PdfReader(BytesIO(draft_list(make_draft(28)))).pages[0]
    page.extract_text(visitor_text=lambda text, cm, tm, font, size: sizes.append((text.strip(), size)))
    by_words = dict(sizes)
    assert by_words["214"] >= 20
    assert by_words["last trim 152 days ago"] >= 12


def test_same_list_same_bytes_and_strange_names_are_safe(make_draft, text_of):
    groups = (DraftGroup("A & <B>", (DraftCow("<i>7</i>", "1 < 2 & 3 > 2"),)),)
    draft = make_draft(1, groups=groups, farm_name="Ŵyl & <Sons>")
    assert draft_list(draft) == draft_list(draft)
    text = text_of(draft_list(draft))
    assert "A & <B>: 1 cow" in text
    assert "<i>7</i> 1 < 2 & 3 > 2" in text
    assert "Ŵyl & <Sons>" in text


def test_a_time_without_a_zone_is_refused(make_draft):
    with pytest.raises(ValueError, match="time zone"):
        draft_list(make_draft(1, made_at=datetime(2026, 12, 1)))  # noqa: DTZ001
