from dataclasses import replace
from datetime import date
from decimal import Decimal

from visits.documents.visit_report import visit_report
from visits.documents.visit_report_content import Consumable
from visits.documents.visit_report_words import report_words, used_words


def every_word(value):
    """All strings in the words of a report."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, tuple):
        for item in value:
            yield from every_word(item)
    elif hasattr(value, "__dataclass_fields__"):
        for name in value.__dataclass_fields__:
            if name != "sole":
                yield from every_word(getattr(value, name))


def test_every_word_said_is_in_the_pdf(make_report, text_of):
    blocks = tuple(replace(block, who="we come Tue 29 Dec, 09:40") for block in make_report(30).blocks)
    report = make_report(30, blocks=blocks, was_done=("All done.",), version=2, change_note="cow 405 added")
    pdf = text_of(visit_report(report)).replace(" ", "")
    said = [words for words in every_word(report_words(report)) if words]
    assert len(said) > 100
    assert [words for words in said if words.replace(" ", "") not in pdf] == []


def test_blocks_of_one_day_stand_apart_by_who_takes_them_off(make_report):
    first, *others = make_report(30).blocks
    report = make_report(30, blocks=(replace(first, who="we come Tue 29 Dec, 09:40"), *others))
    assert [(due.day, due.who, len(due.lines)) for due in report_words(report).blocks] == [
        ("By Tue 29 Dec, 2 wooden blocks", "", 2),
        ("By Tue 29 Dec, 1 wooden block:", "we come Tue 29 Dec, 09:40", 1),
    ]


def test_blocks_of_several_kinds_each_tell_their_own(make_report):
    first, second, _ = make_report(30).blocks
    shoe = replace(second, kind="shoe", put_on=date(2026, 11, 20))
    (due,) = report_words(make_report(30, blocks=(first, shoe))).blocks
    assert (due.day, [line.text for line in due.lines]) == (
        "By Tue 29 Dec",
        ["right hind, inner claw (wooden block)", "right hind, inner claw (shoe, since Fri 20 Nov)"],
    )


def test_a_referral_that_nobody_is_noted_to_have_told_says_so(make_report):
    (line,) = (replace(line, told="") for line in make_report(30).vet)
    (said,) = report_words(make_report(30, vet=(line,))).vet
    assert said.text.endswith("Vet advised. Not noted that the vet was told.")


def test_a_report_made_on_a_later_day_says_when(make_report):
    late = make_report(1).made_at.replace(year=2027)
    assert report_words(make_report(1, made_at=late)).facts.endswith("report made 1 Dec 2027")
    assert "report made" not in report_words(make_report(1)).facts


def test_used_things_are_told_with_their_unit(make_report):
    assert [used_words(item) for item in make_report(1).consumables][1] == "120 ml block glue"
    assert used_words(Consumable("wraps", Decimal(2), "each")) == "2 wraps"
