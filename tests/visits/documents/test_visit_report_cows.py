from dataclasses import replace
from datetime import date
from io import BytesIO

from pypdf import PdfReader

from visits.documents.visit_report import visit_report
from visits.documents.visit_report_content import CowLine, FootLine, Found
from visits.domain.feet import Claw, Foot


def test_a_row_tells_foot_lesion_place_how_bad_what_was_done_and_when_to_look_again(make_report, text_of):
    text = text_of(visit_report(make_report(1)))
    assert "400 right hind O Sole ulcer, clear: outer claw, where sole meets heel (4)" in text
    assert "levelled with its partner, weight taken off, block on Tue 29 Dec" in text


def test_cows_with_nothing_found_are_named_together(make_report, text_of):
    text = text_of(visit_report(make_report(5)))
    assert "Nothing found Functional trim (3): 401, 402, 404" in text


def test_what_the_vet_should_see_is_marked_in_words_too(make_report, text_of):
    found = Found("Swelling above the horn", Claw.LATERAL, 9, "skin behind, above the heel", 3, for_vet=True)
    cow = CowLine("77", "looked at", (FootLine(Foot.LEFT_HIND, (found,)),))
    assert "severe: outer claw, skin behind, above the heel (9). Vet advised" in text_of(
        visit_report(make_report(1, cows=(cow,)))
    )


def test_a_cow_who_is_for_the_vet_says_so_in_her_row(make_report, text_of):
    text = text_of(visit_report(make_report(30)))
    row = text[text.index("419 right hind") : text.index("420 left fore")]
    assert "Digital dermatitis, raw sore, over 2 cm, severe" in row
    assert "Vet advised: swelling above the dew claw, very lame (3 of 3)." in row


def test_how_to_read_the_drawings_stands_above_them(make_report, text_of):
    text = text_of(visit_report(make_report(30)))
    assert text.index("Red diamond: vet advised") < text.index("400 right hind O")


def test_no_cow_is_split_over_a_page(make_report):
    found = (Found("Sole ulcer", Claw.LATERAL, 4, "where sole meets heel", 2),)
    feet = tuple(FootLine(foot, found, (f"done {foot}",)) for foot in Foot)
    cows = tuple(CowLine(f"n{number}n", "corrective trim", feet) for number in range(40))
    pages = [
        page.extract_text() for page in PdfReader(BytesIO(visit_report(make_report(40, cows=cows)))).pages
    ]
    assert len(pages) > 2
    for page in pages:
        numbers, rows = sum(f"n{number}n" in page for number in range(40)), page.count("done RH")
        assert numbers == rows
        assert [page.count(f"done {foot}") for foot in Foot] == [numbers] * 4


def test_a_foot_that_was_done_without_a_lesion_is_shown_on_a_cow_with_one(make_report, text_of):
    feet = (
        FootLine(Foot.LEFT_HIND, (Found("Sole ulcer", Claw.LATERAL),)),
        FootLine(Foot.RIGHT_HIND, done=("modelled",), recheck_on=date(2026, 12, 8)),
    )
    text = text_of(visit_report(make_report(1, cows=(CowLine("9", "corrective trim", feet),))))
    assert "right hind O modelled Tue 8 Dec" in text


def test_a_note_alone_is_shown(make_report, text_of):
    cow = CowLine("9", "looked at", note="would not go in, try next time")
    assert "9 would not go in, try next time" in text_of(visit_report(make_report(1, cows=(cow,))))


def test_how_to_read_the_drawings_is_said_only_where_there_are_some(make_report, text_of):
    report = make_report(5)
    assert "toes up" in text_of(visit_report(report))
    plain = tuple(cow for cow in report.cows if cow.is_plain)
    assert "toes up" not in text_of(visit_report(replace(report, cows=plain)))


def test_a_lesion_of_the_skin_names_its_place_once(make_report, text_of):
    found = Found("Interdigital hyperplasia", Claw.SKIN, 0, "skin between the claws", 1)
    cow = CowLine("9", "looked at", (FootLine(Foot.LEFT_HIND, (found, Found("Swelling", Claw.SKIN))),))
    text = text_of(visit_report(make_report(1, cows=(cow,))))
    assert "Interdigital hyperplasia, slight: skin between the claws (0)" in text
    assert "Swelling: skin" in text


def test_a_cow_with_everything_everywhere_still_comes_out(make_report, text_of):
    found = tuple(
        Found(f"Lesion number {zone}", Claw.LATERAL, zone, "where wall meets heel", 3, True)
        for zone in range(13)
    )
    feet = tuple(FootLine(foot, found * 3, ("done",) * 12, Claw.MEDIAL) for foot in Foot)
    cow = CowLine("77", "corrective trim", feet, "note " * 300)
    text = text_of(visit_report(make_report(3, cows=(cow, cow))))
    assert text.count("Lesion number 12") == 2 * 4 * 3


def test_a_number_in_other_letters_is_written_in_them(make_report, text_of):
    cow = CowLine("Ψ7", "looked at", note="kicks", walked="2, UK 0 to 3")
    text = text_of(visit_report(make_report(2, cows=(cow, CowLine("Ω9", "looked at", note="lies down")))))
    assert "Ψ7" in text
    assert "lame, 2, UK 0 to 3" in text
    assert "Ω9 lies down" in text
