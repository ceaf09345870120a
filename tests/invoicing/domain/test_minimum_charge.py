from decimal import Decimal as D

import pytest

from invoicing.domain.minimum_charge import missing_to_minimum


@pytest.mark.parametrize(
    ("minimum", "nets", "missing"),
    [
        ("80", ["35", "13.50"], "31.50"),
        ("48.50", ["35", "13.50"], "0"),
        ("40", ["35", "13.50"], "0"),
        ("0", ["5"], "0"),
        ("80", ["0"], "0"),
        ("80", [], "0"),
    ],
)
def test_a_visit_is_filled_up_but_a_free_one_stays_free(minimum, nets, missing):
    assert missing_to_minimum(D(minimum), [D(net) for net in nets]) == D(missing)
