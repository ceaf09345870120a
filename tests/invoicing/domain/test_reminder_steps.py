import pytest

from invoicing.domain.reminder_steps import ReminderState


@pytest.mark.parametrize("kind", [ReminderState])
def test_each_has_words_of_its_own(kind):
    assert len({member.label for member in kind}) == len(kind)
