from dataclasses import FrozenInstanceError
from fractions import Fraction

import pytest

from visits.domain.planning.audit.plan import Cost


def test_what_a_plan_claims_cannot_be_changed():
    claim = Cost(*[Fraction(1)] * 4)
    with pytest.raises(FrozenInstanceError):
        claim.total = Fraction(0)
