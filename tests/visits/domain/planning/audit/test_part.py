from visits.domain.planning.audit.part import Faults, Part
from visits.domain.planning.audit.values import COUNT, TEXT


def test_every_fault_is_noted_once_with_its_path():
    faults = Faults()
    part = Part({"a": 1, "rows": [[1, -1]], "x": 0}, "top", "a b rows", faults)
    assert part.need("a", TEXT) == ""
    assert part.need("b", TEXT) == ""
    assert part.rows("rows", COUNT) == [[1, 0]]
    assert faults.broken == ["top.a: is not a text", "top.b: is missing", "top.rows[0][1]: is below 0"]
    assert faults.surplus == ["top.x: is not a key of this document"]
