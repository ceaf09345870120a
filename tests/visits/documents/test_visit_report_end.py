from decimal import Decimal
from io import BytesIO

from pypdf import PdfReader

from visits.documents.visit_report import visit_report
from visits.documents.visit_report_content import Consumable, HygieneStep


def test_what_was_used_is_told_with_its_unit(make_report, text_of):
    used = (Consumable("block glue", Decimal("120.50"), "ml"), Consumable("wraps", Decimal(2)))
    assert "Used 120.5 ml block glue; 2 wraps" in text_of(visit_report(make_report(1, consumables=used)))
    assert "Nothing was used up." in text_of(visit_report(make_report(1, consumables=())))


def test_a_washing_step_that_was_left_out_is_not_hidden(make_report, text_of):
    steps = (HygieneStep("crush washed", done=False),)
    text = text_of(visit_report(make_report(1, hygiene_steps=steps)))
    assert "Not done: crush washed" in text
    assert "Hygiene 2, digital dermatitis active" in text
    assert "No step was noted." in text_of(visit_report(make_report(1, hygiene_steps=())))


def test_who_signed_and_when_stands_there(make_report, text_of):
    text = text_of(visit_report(make_report(1)))
    assert "Ann Brook, trimmer, 1 Dec 2026, 11:42" in text
    assert "J. Marsden, for the farm, 1 Dec 2026, 11:45" in text
    assert "Not signed." in text_of(visit_report(make_report(1, signed=())))


def test_cautions_and_next_visit_are_those_handed_in(make_report, text_of):
    text = text_of(visit_report(make_report(1)))
    assert "it is not a diagnosis" in text
    assert "blocks and re-checks: 11 cows" in text
    without = text_of(visit_report(make_report(1, cautions=(), next_visit="")))
    assert "Please mind" not in without
    assert "Not booked yet." in without


def test_a_page_may_end_between_cautions(make_report):
    cautions = tuple(f"caution number {number}." for number in range(60))
    first, second = PdfReader(BytesIO(visit_report(make_report(1, cautions=cautions)))).pages
    assert "Please mind" in first.extract_text()
    assert "caution number 0." in first.extract_text()
    assert "caution number 59." in second.extract_text()


def test_the_words_of_the_sign_off_are_printed_line_by_line(make_report, text_of):
    told = {"was_done": ("30 cows trimmed.",), "farm_to_do": ("Bath on Friday.", "Ring us about 419.")}
    text = text_of(visit_report(make_report(1, **told)))
    assert "Told at the end of the visit What was done 30 cows trimmed." in text
    assert "What is yours to do Bath on Friday." in text
    assert text.index("Bath on Friday.") < text.index("Ring us about 419.")
    assert "Told at the end" not in text_of(visit_report(make_report(1)))
