from farms.domain.handling import CrushPlace
from farms.domain.hygiene import HygieneLevel
from trimops.kernel.choices import choices_of


def test_a_labelled_enum_becomes_value_and_words_in_its_own_order():
    assert choices_of(CrushPlace) == [("brought", "Crush is brought"), ("on_site", "Crush on the farm")]
    assert [value for value, _ in choices_of(HygieneLevel)] == [0, 1, 2, 3]
