"""A business's own texts."""

import pytest

from visits.domain.messages.house_texts import HOUSE_TEXTS, HouseText
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.messages.text_template import TextMakesNoSense
from visits.models import MessageText
from visits.selectors.messages.texts_in_use import texts_of
from visits.services.messages.save_message_text import TextWord, save_message_text

HOUSE = HOUSE_TEXTS[MessageKind.LATE]


def keep(house, text, language="en"):
    return save_message_text(business=house.business, word=TextWord(MessageKind.LATE, language, text))


def test_only_what_differs_is_kept(house):
    row = keep(house, HouseText(HOUSE.subject, "Own {farm}.\r\n", HOUSE.short))
    assert (row.subject, row.body, row.short) == ("", "Own {farm}.", "")


def test_the_house_text_back_again_leaves_nothing(house):
    keep(house, HouseText("Own", "Own", "Own"))
    assert keep(house, HOUSE) is None
    assert keep(house, HouseText("", "", "")) is None
    assert not MessageText.objects.within(house.scope).exists()


def test_in_another_language_what_equals_the_english_one_is_not_kept(house):
    keep(house, HouseText("Own late", "", ""))
    assert keep(house, HouseText("Own late", HOUSE.body, HOUSE.short), "de") is None
    row = keep(house, HouseText("Später", HOUSE.body, HOUSE.short), "de")
    assert (row.subject, row.body) == ("Später", "")
    keep(house, HouseText("Late, as ever", "", ""))
    in_use = texts_of(house.scope)
    assert in_use.part(MessageKind.LATE, "subject", "de") == ("Später", "de")
    assert in_use.part(MessageKind.LATE, "subject", "cy") == ("Late, as ever", "en")


def test_a_mail_about_a_report_must_lead_to_it(house):
    word = TextWord(MessageKind.REPORT, "en", HouseText("", "Your report is ready.", ""))
    with pytest.raises(TextMakesNoSense, match=r"Put \{link\} somewhere"):
        save_message_text(business=house.business, word=word)


@pytest.mark.parametrize("part", ["subject", "body", "short"])
def test_a_place_of_another_kind_is_refused_on_its_part(house, part):
    text = {"subject": "", "body": "", "short": "", part: "{before}"}
    with pytest.raises(TextMakesNoSense) as refused:
        keep(house, HouseText(**text))
    assert refused.value.field == part
