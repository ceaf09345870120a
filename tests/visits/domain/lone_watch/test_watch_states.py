"""Every word that a page shows of a watch is there."""

import pytest

from visits.domain.lone_watch.watch_states import CallAnswer, CalledBy, WatchEnd, WatchState


@pytest.mark.parametrize("kind", [WatchState, WatchEnd, CalledBy, CallAnswer])
def test_each_has_words_of_its_own_and_fits_its_column(kind):
    labels = [member.label for member in kind]
    assert len(set(labels)) == len(labels)
    assert all(label[0].isupper() for label in labels)
    assert max(len(member.value) for member in kind) <= 10
