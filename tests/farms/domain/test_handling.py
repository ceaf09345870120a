import pytest

from farms.domain.handling import CrushPlace, PowerSupply, Shelter


@pytest.mark.parametrize("kind", [CrushPlace, PowerSupply, Shelter])
def test_every_choice_has_words_of_its_own(kind):
    labels = [member.label for member in kind]
    assert all(labels)
    assert len(set(labels)) == len(labels)


def test_power_is_kept_as_the_socket_is_called():
    assert [power.value for power in PowerSupply] == ["none", "13A", "32A"]
