"""The title of the kit's page says what runs out first and what to do."""

from datetime import date

import pytest

from visits.domain.kit.kit_answer import ItemOutlook, day_words, kit_answer, on_day

TODAY, LAST = date(2026, 3, 3), date(2026, 3, 31)
THURSDAY, LATER = date(2026, 3, 5), date(2026, 3, 20)


@pytest.mark.parametrize(
    ("items", "answer"),
    [
        ([ItemOutlook("Glue")], "Everything lasts beyond 31 March"),
        ([ItemOutlook("Glue", LATER), ItemOutlook("Wrap")], "Everything lasts until 19 March"),
        ([ItemOutlook("Glue", THURSDAY, order_now=True)], "Glue: out on Thursday, order it"),
        (
            [ItemOutlook("Glue", THURSDAY), ItemOutlook("Wrap")],
            "Glue: out on Thursday; nothing to order today",
        ),
        (
            [ItemOutlook("Wrap", order_now=True), ItemOutlook("Glue", THURSDAY, order_now=True)],
            "Glue: out on Thursday; 1 more to order",
        ),
        ([ItemOutlook("Wooden block", order_now=True)], "Order wooden block"),
        ([ItemOutlook("Glue", TODAY, order_now=True)], "Glue: used up, order it"),
        ([ItemOutlook("Glue", TODAY)], "Glue: used up"),
        (
            [ItemOutlook("Glue", TODAY), ItemOutlook("Wrap", TODAY), ItemOutlook("Shoe", order_now=True)],
            "2 consumables are used up; 1 more to order",
        ),
        ([ItemOutlook("Glue", below=("Van 1",))], "Glue: below nought in Van 1, count it"),
        (
            [ItemOutlook("Glue", below=("Van 1",)), ItemOutlook("Wrap", below=("Store",))],
            "2 consumables stand below nought: count them",
        ),
        ([ItemOutlook("Glue", TODAY, is_told=False)], "Nothing is counted yet: say what lies where"),
        (
            [ItemOutlook("Glue", TODAY, order_now=True, is_told=False), ItemOutlook("Wrap", LATER)],
            "Glue: never bought or counted, say what lies there",
        ),
        (
            [ItemOutlook("Glue", is_told=False), ItemOutlook("Shoe", is_told=False), ItemOutlook("Wrap")],
            "2 consumables were never bought or counted: say what lies there",
        ),
        (
            [ItemOutlook("Glue", is_told=False), ItemOutlook("Wrap", THURSDAY, order_now=True)],
            "Wrap: out on Thursday, order it",
        ),
        (
            [ItemOutlook("Glue", below=("Van 1", "Store"))],
            "Glue: below nought in two places or more, count it",
        ),
    ],
)
def test_the_answer(items, answer):
    assert kit_answer(items, TODAY, LAST) == answer


@pytest.mark.parametrize(
    ("day", "words", "on"),
    [
        (TODAY, "today", "today"),
        (date(2026, 3, 4), "tomorrow", "tomorrow"),
        (date(2026, 3, 9), "Monday", "on Monday"),
        (date(2026, 3, 10), "10 March", "on 10 March"),
        (date(2027, 1, 2), "2 January 2027", "on 2 January 2027"),
    ],
)
def test_a_day_is_told_as_people_tell_it(day, words, on):
    assert (day_words(day, TODAY), on_day(day, TODAY)) == (words, on)
