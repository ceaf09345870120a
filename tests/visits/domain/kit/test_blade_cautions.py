import pytest

from visits.domain.kit.blade_cautions import SHARPENING, at_work_words, broken_words
from visits.domain.kit.blade_kinds import BladeKind


@pytest.mark.parametrize("kind", BladeKind)
def test_a_broken_disc_is_unplugged_and_a_broken_knife_never_mended(kind):
    assert ("plug" in broken_words(kind)) == kind.is_turned
    assert ("never mended" in broken_words(kind)) == (not kind.is_turned)
    assert ("disc" in at_work_words(kind)) == kind.is_turned


def test_sharpening_is_cautioned_for_eyes_the_wheel_and_blue_steel():
    told = " ".join(SHARPENING)
    assert all(word in told for word in ("Eyes", "away from you", "blue", "gloves"))
