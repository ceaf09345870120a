"""The house's own texts."""

from datetime import UTC, datetime, timedelta

import pytest

from farms.domain.told_by import LANGUAGES
from trimops.outbox.domain.sms_size import sms_size
from visits.domain.messages.house_texts import HOUSE_TEXTS, PARTS
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.messages.message_values import MessageFacts, message_values
from visits.domain.messages.text_template import check_text, fill, places_used

HOUR = datetime(2026, 9, 23, 9, 40, tzinfo=UTC)
LINK = "https://week.ash-and-rye.example/list/2n9c-AbCdEfGhIjKlMnOpQrStUv/"


@pytest.mark.parametrize("kind", MessageKind)
def test_each_text_uses_only_places_of_its_kind(kind):
    for part in PARTS:
        check_text(HOUSE_TEXTS[kind].part(part), kind.places)


@pytest.mark.parametrize("kind", MessageKind)
def test_an_sms_with_names_of_usual_length_fits_into_two(kind, london):
    """Wednesday 23 September is as long as a day's name gets."""
    facts = MessageFacts(
        *("Long Meadow Barns", "Ash & Rye Foot Trimming", london, "0199 555 0100", "Frances Hollow"),
        *(HOUR, HOUR + timedelta(days=7), HOUR, HOUR + timedelta(hours=1), 45, 60),
        link=LINK,
    )
    text = fill(HOUSE_TEXTS[kind].short, message_values(facts, "en", short=True))
    size = sms_size(f"{text} Stop: {LINK}")
    assert size.parts <= 2, (size, text)
    assert size.is_plain


@pytest.mark.parametrize("kind", [kind for kind in MessageKind if kind is not MessageKind.REPORT])
def test_each_text_says_which_farm_and_who_writes(kind):
    text = HOUSE_TEXTS[kind]
    for part in ("body", "short"):
        assert {"farm", "business", "phone"} <= places_used(text.part(part))


def test_the_languages_are_offered_by_their_own_names():
    assert LANGUAGES["de"] == "Deutsch"
