"""What happened, in words."""

from datetime import UTC, datetime

from visits.domain.what_happened import WhatHappened, late_words, out_words


def test_every_kind_has_its_words():
    for what in WhatHappened:
        assert what.label[0].isupper()
        assert what.help.endswith(".")
        assert what.to_farms[0].islower()


def test_when_a_van_is_out():
    since, until = datetime(2026, 3, 3, 11, tzinfo=UTC), datetime(2026, 3, 4, 12, 30, tzinfo=UTC)
    assert (
        out_words("Van 1", "Crush broken", since, until)
        == "Van 1: crush broken, Tue 3 Mar 11:00 to Wed 4 Mar 12:30"
    )
    assert out_words("Van 1", "Crush broken", since, since.replace(hour=13)).endswith(
        "Tue 3 Mar 11:00 to 13:00"
    )


def test_until_when_it_is_late():
    assert (
        late_words("Van 1", "Upper Fold", datetime(2026, 3, 3, 14, 20, tzinfo=UTC))
        == "Van 1 is done at Upper Fold at 14:20 only"
    )
