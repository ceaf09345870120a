import pytest

from trimops.kernel.errors import FieldRefused, NotFound, RuleBroken


class GateShut(RuleBroken):
    code = "gate_shut"


def test_a_broken_rule_carries_its_code_and_what_to_mend():
    with pytest.raises(RuleBroken) as caught:
        raise GateShut("Open the gate first.")
    assert (caught.value.code, caught.value.message) == ("gate_shut", "Open the gate first.")
    assert str(caught.value) == "Open the gate first."


def test_a_rule_without_a_code_of_its_own_has_the_general_one():
    assert RuleBroken("No.").code == "rule_broken"


def test_a_field_that_is_refused_is_named_beside_its_message():
    refused = FieldRefused("amount", "More than nought.")
    assert (refused.field, refused.message, refused.code) == ("amount", "More than nought.", "rule_broken")


def test_what_is_not_there_is_not_a_broken_rule():
    assert not issubclass(NotFound, RuleBroken)
