"""Numbers typed at the crush: the hint for a misread tag, and the cows that a number narrows to."""

import random
from collections.abc import Iterable, Iterator

import pytest
from playwright.sync_api import Browser

from farms.domain.ear_tag import ear_tag_hint
from farms.domain.electronic_id import NotAnElectronicId, read_electronic_id
from farms.domain.identity_kind import IdentityKind
from farms.models import Cow
from tests.browser.phone_modules import Module, module_alone
from tests.factories import House, make_cow, make_house

pytestmark = pytest.mark.xdist_group("browser")

# Published or real tags of trade-facts 6.2 (BCMS form; check digit N mod 7 + 1; the last is the misprint of old
# encyclopedia copies), and the codes of 6.1: a printed id, one too large for the 38 bits of ISO 11784.
VECTORS = {
    "UK 123450 600001": "",
    "UK 123450 700002": "",
    "UK 123450 100003": "",
    "UK 284205 600015": "",
    "UK 284205 700016": "",
    "UK 284205 100017": "",
    "UK 230011 200123": "",
    "UK 123456 600001": "check digit does not fit: expected 1",
    "826 123450600001": "",
    "826 284205700016": "284205700016 is too large: at most 274877906943",
    "826 274877906943": "",
    "826 274877906944": "274877906944 is too large: at most 274877906943",
}


@pytest.fixture(scope="module")
def rules(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "rules.js") as module:
        yield module


def test_published_tags_get_the_hint_they_should(rules: Module) -> None:
    hints = rules.run("return given.map((text) => it.checkDigit(text))", list(VECTORS))
    assert dict(zip(VECTORS, hints, strict=True)) == VECTORS


@pytest.mark.parametrize(
    "number", ["", "7", "412", "0412", "A12", "JX 12", "1234567", "12345678901", "UK 1234567"]
)
def test_a_number_of_the_farm_s_own_or_half_a_tag_gets_no_hint(rules: Module, number: str) -> None:
    assert rules.run("return it.checkDigit(given)", number) == ""


def test_eight_figures_after_two_letters_are_taken_for_a_tag(rules: Module) -> None:
    hint = "a UK tag has 12 figures after the letters, this has 8"
    assert rules.run("return it.checkDigit(given)", "GB 12345678") == hint


def test_every_hint_is_the_one_that_the_farm_s_pages_give(rules: Module) -> None:
    texts = [_odd_tag(random.Random(seed)) for seed in range(3000)]
    ask = "return given.map((text) => [it.earTagHint(text), it.electronicIdHint(text), it.checkDigit(text)])"
    for text, (tag, electronic, typed) in zip(texts, rules.run(ask, texts), strict=True):
        assert tag == ear_tag_hint(text), text
        assert electronic == _electronic_hint(text), text
        assert typed in ("", tag, electronic), text
    assert len({ear_tag_hint(text) for text in texts}) > 12, "all kinds of hints were met"


def _odd_tag(dice: random.Random) -> str:
    country = dice.choice(["UK", "uk", "GB", "XI", "IE", "GR", "ZZ", "", "", "826", "000", "001", "U K", "A"])
    figures = "".join(dice.choices("0123456789", k=dice.choice([1, 3, 5, 9, 11, 12, 12, 12, 12, 13, 15, 15])))
    if dice.random() < 0.15:
        figures = figures[:3] + dice.choice("BXZ") + figures[4:]
    cut = dice.randrange(len(figures))
    return (
        country
        + dice.choice(["", " ", "-", "/"])
        + figures[:cut]
        + dice.choice(["", "", " ", ".", "_"])
        + figures[cut:]
    )


def _electronic_hint(text: str) -> str:
    try:
        read_electronic_id(text)
    except NotAnElectronicId as fault:
        return str(fault).removeprefix(f"{text.strip()!r} ")
    return ""


def test_a_typed_number_finds_the_cows_that_the_server_would_find(rules: Module, db: None) -> None:
    """Cow.known_as: exactly that number, or an identity that ends in it; whatever the case of the letters."""
    house = make_house()
    cows = _herd(house)
    typed = sorted(
        {part for cow in cows for part in _parts(cow["number"])} | {"A1", "600001", "k12", "0%", "_"}
    )
    ask = "return given.typed.map((text) => given.cows.filter((cow) => it.isKnownAs(cow, text)).map((cow) => cow.id))"
    found = rules.run(ask, {"cows": cows, "typed": typed})
    for text, ids in zip(typed, found, strict=True):
        assert sorted(ids) == sorted(c.pk for c in Cow.objects.within(house.scope).known_as(text)), text


def _parts(number: str) -> Iterable[str]:
    return (number[first:last] for first in range(len(number)) for last in range(first + 1, len(number) + 1))


def _herd(house: House) -> list[dict[str, object]]:
    """Eighty cows: short and long numbers, some twice, tags and freeze brands that end like another cow's number."""
    dice, herd = random.Random(4), [cow(house.cow.pk, house.cow.number)]
    for nth in range(80):
        number = str(
            dice.choice([dice.randrange(1, 60), dice.randrange(300, 1500), f"A{dice.randrange(1, 20)}"])
        )
        tag = f"UK123450{dice.choice('1234567')}{dice.randrange(99999):05d}"
        identities = {IdentityKind.OFFICIAL_TAG: tag, IdentityKind.FREEZE_BRAND: f"K{dice.randrange(60)}"}
        made = make_cow(house.farm, number, identities if nth % 3 else None)
        herd.append(cow(made.pk, number, *(identities.values() if nth % 3 else ())))
    return herd


def like(rules: Module, cows: list[dict[str, object]], typed: str) -> list[int]:
    return rules.run("return it.cowsLike({ cows: given[0] }, given[1]).map((cow) => cow.id)", [cows, typed])


def cow(pk: int, number: str, *ids: str, listed: bool = False) -> dict[str, object]:
    named = [{"kind": "official_tag", "label": "Official ear tag", "value": value} for value in ids]
    return {"id": pk, "number": number, "ids": named, "why": ["lame"] if listed else []}


FEW = [
    cow(1, "412"),
    cow(2, "4127", listed=True),
    cow(3, "88", "UK123450600412"),
    cow(4, "9", "UK123450100412", listed=True),
    cow(5, "4120"),
    cow(6, "412", listed=True),
    cow(7, "41", "UK123450600099"),
    cow(8, "1412"),
]


def test_her_own_number_comes_first_then_who_is_on_the_list_then_tags_that_end_so(rules: Module) -> None:
    assert like(rules, FEW, "412") == [6, 1, 4, 2, 3, 5]


def test_two_cows_of_one_number_stand_in_a_fixed_order(rules: Module) -> None:
    assert like(rules, [cow(5, "77"), cow(3, "77"), cow(4, "77")], "77") == [3, 4, 5]


def test_one_or_two_figures_are_the_beginning_of_a_number_before_the_end_of_a_tag(rules: Module) -> None:
    herd = [cow(1, "500", "UK123450600012"), cow(2, "120"), cow(3, "12"), cow(4, "1299")]
    assert like(rules, herd, "12") == [3, 2, 4, 1]
    assert like(rules, herd, "012") == [1]


def test_nothing_typed_finds_nobody_and_never_more_than_twelve_are_shown(rules: Module) -> None:
    herd = [cow(pk, f"4{pk:03d}") for pk in range(600)]
    assert like(rules, herd, " ") == []
    assert like(rules, herd, "77") == []
    assert like(rules, herd, "4") == list(range(12))
    assert like(rules, herd, "4599") == [599]
