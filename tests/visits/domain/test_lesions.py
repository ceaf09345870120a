import pytest

from visits.domain.feet import is_zone
from visits.domain.lesions import LESIONS, DDStage, LesionCode, LesionGroup

ATLAS = [
    "AC",
    "CD",
    "CC",
    "SC",
    "DD",
    "ID",
    "IP",
    "HHE",
    "IH",
    "SW",
    "DS",
    "HF",
    "HFA",
    "HFH",
    "HFV",
    "SH",
    "SHD",
    "SHC",
    "U",
    "SU",
    "BU",
    "TU",
    "TN",
    "TS",
    "WL",
    "WLF",
    "WLA",
]


def test_every_code_of_the_atlas_is_in_the_catalogue_once():
    """ICAR claw health atlas, list from memory (trade-facts 1.2)."""
    assert [code.value for code in LESIONS] == ATLAS
    assert set(LESIONS) == set(LesionCode)


@pytest.mark.parametrize(
    ("child", "parent"),
    [
        ("SU", "U"),
        ("BU", "U"),
        ("TU", "U"),
        ("WLA", "WL"),
        ("WLF", "WL"),
        ("SHC", "SH"),
        ("SHD", "SH"),
        ("HFV", "HF"),
    ],
)
def test_a_kind_of_lesion_knows_what_it_is_a_kind_of(child, parent):
    assert LESIONS[LesionCode(child)].parent is LesionCode(parent)


def test_a_kind_of_lesion_is_counted_in_the_same_group_as_its_parent():
    for lesion in LESIONS.values():
        if lesion.parent:
            assert LESIONS[lesion.parent].group is lesion.group


@pytest.mark.parametrize(
    ("group", "codes"),
    [
        (LesionGroup.INFECTIOUS, "DD ID IP HHE"),
        (LesionGroup.SHAPE, "AC CD CC SC"),
        (LesionGroup.SOFT_TISSUE, "SW"),
        (LesionGroup.SKIN, "IH"),
    ],
)
def test_groups_hold_the_lesions_of_the_table(group, codes):
    """trade-facts 1.2; heel horn erosion counts as infectious by default (D5)."""
    assert [code.value for code, lesion in LESIONS.items() if lesion.group is group] == codes.split()


def test_usual_zones_are_on_the_map_and_every_lesion_has_words():
    for lesion in LESIONS.values():
        assert all(is_zone(zone) for zone in lesion.zones)
        assert lesion.name
        assert lesion.meaning
    assert len({lesion.name for lesion in LESIONS.values()}) == len(LESIONS)


@pytest.mark.parametrize(
    ("code", "zones"),
    [
        ("SH", {4, 5, 6}),
        ("SU", {4}),
        ("WL", {1, 2, 3}),
        ("TS", {4, 5}),
        ("HFV", {7, 8}),
        ("HHE", {6}),
        ("DD", {9, 10}),
    ],
)
def test_usual_zones_are_those_printed_with_the_map(code, zones):
    """International Lameness Committee, Kuopio 2008 (trade-facts 1.3, read)."""
    assert LESIONS[LesionCode(code)].zones == zones


@pytest.mark.parametrize(
    ("stage", "active"),
    [("M0", False), ("M1", True), ("M2", True), ("M3", False), ("M4", False), ("M4.1", True)],
)
def test_dermatitis_is_active_in_the_stages_of_the_published_table(stage, active):
    """Doepfer 1997, Berry 2012; table in Vet Res 2020, 10.1186/s13567-020-00750-8."""
    assert DDStage(stage).is_active is active
    assert DDStage(stage).label


def test_no_name_claims_to_be_a_diagnosis_or_a_cure():
    words = " ".join(lesion.name + lesion.meaning for lesion in LESIONS.values()).lower()
    assert not any(word in words for word in ("diagnos", "treat", "dose", "antibiotic"))
