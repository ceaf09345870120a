import json

from visits.domain.crush_catalogue import SIGN_LABELS, crush_catalogue
from visits.domain.crush_entry import SIGNS
from visits.domain.lesions import LESIONS, LesionCode


def _lesion(code):
    return next(lesion for lesion in crush_catalogue()["lesions"] if lesion["code"] == code)


def test_every_sign_has_its_words():
    assert tuple(SIGN_LABELS) == SIGNS


def test_every_lesion_is_told_with_its_places_and_family():
    assert [lesion["code"] for lesion in crush_catalogue()["lesions"]] == [code.value for code in LESIONS]
    assert _lesion("SU") == {
        "code": "SU",
        "name": "sole ulcer",
        "group": "claw_horn",
        "meaning": LESIONS[LesionCode.SU].meaning,
        "zones": [4],
        "alarm": True,
        "on_skin": False,
        "parent": "U",
    }
    assert _lesion("DD")["on_skin"] is True


def test_it_can_be_sent_as_it_is():
    told = json.loads(json.dumps(crush_catalogue()))
    assert told["zones"]["names"]["0"] == "skin between the claws"
    assert told["zones"]["skin"] == [0, 9, 10]
    assert {scale["id"]: scale["lame_from"] for scale in told["scales"]} == {"UK0-3": 2, "S1-5": 3}
    assert [stage["code"] for stage in told["stages"] if stage["active"]] == ["M1", "M2", "M4.1"]
    assert told["labels"]["blocks"]["wood"] == "wooden block"
