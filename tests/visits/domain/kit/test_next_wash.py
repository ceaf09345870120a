"""gov.uk's advice to livestock keepers: cleanse and disinfect before and after each contact (trade-facts 5.2)."""

import pytest

from farms.domain.hygiene import HygieneLevel
from visits.domain.kit.next_wash import WashStand, next_wash

CLEAN, USUAL, SORE, SHUT = HygieneLevel


@pytest.mark.parametrize(
    ("before", "to", "is_washed", "stand"),
    [
        (USUAL, USUAL, True, "done"),
        (USUAL, USUAL, False, "due"),
        (CLEAN, SORE, False, "due"),
        (SORE, USUAL, False, "urgent"),
        (SORE, CLEAN, True, "done"),
        (None, CLEAN, False, "due"),
        (SHUT, USUAL, True, "urgent"),
        (SHUT, USUAL, False, "urgent"),
        (SHUT, SHUT, True, "done"),
    ],
)
def test_what_stands_between_two_yards(before, to, is_washed, stand):
    assert next_wash(to=to, before=before, is_washed=is_washed).stand is WashStand(stand)


def test_after_a_restricted_herd_washing_alone_does_not_open_the_road():
    said = next_wash(to=CLEAN, before=SHUT, is_washed=True)
    assert "vet" in said.why
    assert "local rules" in said.why


def test_it_says_which_herd_is_the_less_clean_one():
    said = next_wash(to=CLEAN, before=SORE, is_washed=False)
    assert "digital dermatitis active" in said.why
    assert "closed, clean herd" in said.why
