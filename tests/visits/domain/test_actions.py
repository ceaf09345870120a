import pytest

from visits.domain.actions import ActionKind, BlockKind, TrimKind, trim_kind_of


@pytest.mark.parametrize(
    ("done", "kind"),
    [
        ("", "check"),
        ("no_cut", "check"),
        ("block_off", "check"),
        ("dressing wrap", "check"),
        ("length", "functional"),
        ("length balance model", "functional"),
        ("no_cut model", "functional"),
        ("length balance model relief", "corrective"),
        ("loose_horn", "corrective"),
        ("block", "corrective"),
        ("length block_off", "functional"),
    ],
)
def test_the_kind_of_trim_follows_from_what_was_done(done, kind):
    """T4: three steps are a functional trim, relief and loose horn make it corrective (common practice)."""
    assert trim_kind_of(ActionKind(word) for word in done.split()) is TrimKind(kind)


@pytest.mark.parametrize("kinds", [ActionKind, BlockKind, TrimKind])
def test_every_choice_has_words_of_its_own(kinds):
    assert len({kind.label for kind in kinds}) == len(kinds)
