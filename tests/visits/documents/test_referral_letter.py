from io import BytesIO

import pytest
from pypdf import PdfReader

from tests.visits.documents.letters import jpeg, make_letter
from visits.documents.referral_letter import referral_letter

PICTURES = {"photo-0": jpeg(), "photo-1": jpeg(480, 640, "#556688"), "photo-2": jpeg(800, 200)}


def pages_of(pdf):
    return PdfReader(BytesIO(pdf)).pages


@pytest.mark.parametrize(("feet", "photos"), [(0, 0), (0, 1), (1, 0), (1, 3), (2, 3)])
def test_it_is_one_page_with_all_its_photos(feet, photos):
    (page,) = pages_of(referral_letter(make_letter(feet, photos), PICTURES))
    assert len(page.images) == photos


def test_the_same_letter_gives_the_same_bytes():
    assert referral_letter(make_letter(), PICTURES) == referral_letter(make_letter(), PICTURES)


def test_it_tells_the_cow_what_was_seen_done_and_not_done_and_who_was_told(text_of):
    text = text_of(referral_letter(make_letter(), PICTURES))
    for words in (
        "Cow 412, High Thornbeck: left hind foot for the vet",
        "To J. Marsden",
        "UK 123456 700123",
        "Walked in at 3 (UK 0 to 3).",
        "Lesion seen: Toe ulcer, severe: outer claw, white line at the toe (1).",
        "Done: Trimmed, loose horn off.",
        "Not done: Work on this foot stopped. No block put on.",
        "Earlier: 12 Aug 2026: Sole ulcer",
        "J. Marsden was told on 1 Dec 2026, 10:20",
        "left hind, 1 December 2026, 10:20",
        "It is no diagnosis",
    ):
        assert words in text, words


def test_it_never_names_an_illness_a_medicine_or_a_dose(text_of):
    text = text_of(referral_letter(make_letter(), PICTURES)).lower()
    assert text.count("diagnos") == 1
    assert not [word for word in ("prescri", "treatment", "dose", "antibiotic") if word in text]


def test_a_photo_that_cannot_be_drawn_is_said_so_and_the_letter_comes_out(text_of):
    pictures = {"photo-0": b"\xff\xd8\xff not much of a picture \xff\xd9"}
    text = text_of(referral_letter(make_letter(), pictures))
    assert text.count("This photo cannot be drawn.") == 2


def test_photos_left_out_are_counted(text_of):
    assert "Photos (and 4 more at the trimmer's)" in text_of(
        referral_letter(make_letter(photos_left_out=4), PICTURES)
    )


def test_a_later_version_says_what_it_changes(text_of):
    text = text_of(referral_letter(make_letter(version=2, change_note="who was told"), PICTURES))
    assert "Version 2, in place of the one before. Changed: who was told" in text


def test_where_nobody_was_told_it_says_so(text_of):
    assert "Not noted that the vet was told." in text_of(referral_letter(make_letter(told=()), PICTURES))


def test_its_words_are_embedded_and_it_names_itself():
    reader = PdfReader(BytesIO(referral_letter(make_letter(), PICTURES)))
    assert reader.metadata.title == "Cow 412, High Thornbeck: left hind foot for the vet"
    assert reader.trailer["/Root"]["/Lang"] == "en-GB"
    for font in reader.pages[0]["/Resources"]["/Font"].values():
        assert "/FontFile2" in font.get_object()["/FontDescriptor"].get_object()


def test_long_words_run_on_rather_than_off_the_page(text_of):
    letter = make_letter(4, farm_name="x" * 120, note="word " * 400, cow="1" * 20)
    text = text_of(referral_letter(letter, PICTURES))
    assert text.count("word") == 400


def test_a_long_farm_name_leaves_the_cow_and_the_day_at_the_foot():
    letter = make_letter(farm_name="Over Skelder and Far Moss Dairy Partners " * 4)
    (page,) = pages_of(referral_letter(letter, PICTURES))
    assert "… · cow 412, 1 Dec 2026" in page.extract_text()
