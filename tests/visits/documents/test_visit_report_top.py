from dataclasses import replace
from datetime import date

from visits.documents.visit_report import visit_report
from visits.documents.visit_report_content import FarmTask, VetReferral
from visits.documents.visit_report_words import report_title
from visits.domain.feet import Foot


def test_the_title_is_the_answer(make_report):
    assert report_title(make_report(30)) == "High Thornbeck: 30 cows seen, 1 for the vet, 3 blocks on"
    assert report_title(make_report(1, blocks=())) == "High Thornbeck: 1 cow seen"


def test_two_feet_of_one_cow_are_one_cow_for_the_vet(make_report):
    lines = tuple(VetReferral("419", foot, "swelling") for foot in (Foot.LEFT_HIND, Foot.RIGHT_HIND))
    assert "1 for the vet" in report_title(make_report(30, vet=lines))


def test_at_the_top_stand_the_vet_blocks_and_what_to_do(make_report, text_of):
    text = text_of(visit_report(make_report(30)))
    top = text[: text.index("What was found")]
    assert (
        "Cow 419, right hind: swelling above the dew claw, very lame (3 of 3). Vet advised. Told J. Marsden"
        in top
    )
    assert "By Tue 29 Dec, 3 wooden blocks 400 right hind, inner claw 412 right hind" in top
    assert "By Fri 4 Dec: Look at the dressed feet, take the dressing off (cows 407, 419)" in top


def test_what_is_due_first_stands_first(make_report, text_of):
    tasks = (FarmTask("undated"), FarmTask("later", date(2026, 12, 9)), FarmTask("sooner", date(2026, 12, 2)))
    text = text_of(visit_report(make_report(1, to_do=tasks)))
    assert text.index("sooner") < text.index("later") < text.index("undated")


def test_a_block_past_its_day_says_so_and_since_when_it_is_on(make_report, text_of):
    report = make_report(1)
    old = replace(report.blocks[0], put_on=date(2026, 10, 20), off_by=date(2026, 11, 17))
    text = text_of(visit_report(replace(report, blocks=(old,))))
    assert "Tue 17 Nov (overdue)" in text
    assert "since Tue 20 Oct" in text


def test_with_nothing_to_tell_it_says_so(make_report, text_of):
    text = text_of(visit_report(make_report(0, to_do=())))
    assert "No cow for the vet this time." in text
    assert "No block is on." in text
    assert "Nothing this time." in text


def test_a_new_version_says_what_changed(make_report, text_of):
    text = text_of(visit_report(make_report(1, version=2, change_note="cow 405 added")))
    assert "version 2" in text
    assert "Version 2, in place of the one before. Changed: cow 405 added" in text
