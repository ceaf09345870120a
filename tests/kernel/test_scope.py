from dataclasses import FrozenInstanceError

import pytest

from trimops.kernel.scope import Scope


def test_staff_see_the_whole_business():
    assert not Scope(business_id=1).is_farm_client


def test_a_farm_client_is_held_to_one_farm():
    assert Scope(business_id=1, farm_id=7).is_farm_client


def test_a_scope_cannot_be_widened_once_made():
    scope = Scope(business_id=1, farm_id=7)
    with pytest.raises(FrozenInstanceError):
        scope.farm_id = None
