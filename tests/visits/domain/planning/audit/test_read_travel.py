from fractions import Fraction

from visits.domain.planning.audit.part import Faults, Part
from visits.domain.planning.audit.read_travel import read_travel


def test_a_table_may_name_more_places_than_are_used():
    faults = Faults()
    table = {"kind": "matrix", "places": ["b", "a"], "minutes": [[0, 1], [2, 0]], "km": [[0, 3], [4, 0]]}
    legs = read_travel(Part({"travel": table}, "", "travel", faults), {"a": (0.0, 0.0)})
    assert faults == Faults()
    assert (legs.between("a", "b").time, legs.between("a", "b").metres) == (120_000_000, 4_000)


def test_a_speed_of_nothing_and_a_key_of_the_other_kind_are_faults():
    faults = Faults()
    guess = {"kind": "estimate", "circuity": 1, "kmh": 0, "minutes_per_leg": 0, "km": []}
    legs = read_travel(Part({"travel": guess}, "", "travel", faults), {})
    assert legs.kmh == Fraction(1)
    assert faults.broken == ["travel.kmh: is 0"]
    assert faults.surplus == ["travel.km: is not a key of this document"]
