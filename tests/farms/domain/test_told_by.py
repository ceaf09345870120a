"""How somebody is told."""

from farms.domain.told_by import FALLBACK, LANGUAGES, ToldBy


def test_every_way_has_a_word():
    assert [way.label for way in ToldBy] == ["not told", "by e-mail", "by SMS"]


def test_english_is_offered_first():
    assert next(iter(LANGUAGES)) == FALLBACK
