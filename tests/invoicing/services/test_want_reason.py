"""A reason is more than space."""

import pytest

from invoicing.services.want_reason import ReasonMissing, want_reason


def test_the_reason_is_taken_without_space_around_it():
    assert want_reason(words="  They are friends\n", ask="Say why.") == "They are friends"


@pytest.mark.parametrize("words", ["", "  \n"])
def test_without_one_it_is_asked_for(words):
    with pytest.raises(ReasonMissing) as refused:
        want_reason(words=words, ask="Say why.")
    assert (refused.value.message, refused.value.code) == ("Say why.", "reason_missing")
