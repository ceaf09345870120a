"""Sixty cows of a day, dealt from a seed. The rates are our own: no source, only what the bars ask to be in it."""

from dataclasses import replace
from random import Random

from tests.browser import crush_plans as plans
from tests.browser.crush_plans import CowPlan
from tests.browser.crush_yard import BLOCKED, HERD, LATE

LETTERED = "B12"
UNKNOWN = ("9001", "9002", LETTERED)
# How many of each in sixty; with three re-checks, and one for the vet.
RATES = {
    plans.sound: 23,
    plans.hind_only: 4,
    plans.no_cut: 5,
    plans.sole_ulcer: 7,
    plans.dermatitis: 7,
    plans.white_line: 5,
    plans.heel_erosion: 2,
    plans.several: 3,
}
NOTES = (
    "Kicks to the left",
    "Quiet; thin sole felt on the right",
    "Ask for her again in spring – 3 × “lame”",
)


def sixty_cows(seed: int) -> list[CowPlan]:
    """Sixty plans in the order in which the cows come, each cow once."""
    dice = Random(seed)
    herd = [number for number in HERD if number not in (*BLOCKED, LATE)]
    numbers = [*UNKNOWN, *dice.sample(herd, sum(RATES.values()) + 1 - len(UNKNOWN))]
    dealt = [make(numbers.pop(0)) for make, count in RATES.items() for _ in range(count)]
    dealt += [plans.block_off(number) for number in BLOCKED]
    dealt.append(plans.for_the_vet(numbers.pop(0)))
    varied = [_varied(plan, place, dice) for place, plan in enumerate(dealt)]
    dice.shuffle(varied)
    return varied


def some_of(dealt: list[CowPlan], count: int) -> list[CowPlan]:
    """So many of them in their order: the first of each kind, then the others as they come."""
    firsts = {plan.what: plan for plan in reversed(dealt)}.values()
    rest = [plan for plan in dealt if plan not in firsts]
    chosen = [*firsts, *rest][:count]
    return [plan for plan in dealt if plan in chosen]


def _varied(plan: CowPlan, place: int, dice: Random) -> CowPlan:
    """A score here, a note or a picture there, a measure on some, as a day brings them."""
    if plan.what == "sound" and plan.score is None and dice.random() < 0.3:
        plan = replace(plan, score=dice.randint(0, 1))
    if dice.random() < 0.1:
        plan = replace(plan, note=dice.choice(NOTES))
    if plan.what in _WAYS:
        plan = _WAYS[plan.what](plan, place, dice)
    return plan


def _ulcer(plan: CowPlan, place: int, dice: Random) -> CowPlan:
    foot = ("LH", "RH", "LF")[place % 3]
    plan = plan.with_foot(foot=foot, look_again=(None, 14, 21)[place % 3])
    if place % 3 == 0:
        plan = plan.with_foot(wall_mm=80 + place % 7, toe_angle=50)
    return plan.with_foot(photos=1) if dice.random() < 0.5 else plan


def _dermatitis(plan: CowPlan, place: int, dice: Random) -> CowPlan:
    again = plans.dermatitis(plan.number, dice.choice(("LH", "RH")), ("M2", "M1", "M4", "M4.1")[place % 4])
    return replace(again, note=plan.note, photos=int(place % 3 == 0))


def _white_line(plan: CowPlan, place: int, dice: Random) -> CowPlan:
    return replace(plans.white_line(plan.number, ("WL", "WLA")[place % 2]), note=plan.note)


def _for_the_vet(plan: CowPlan, place: int, dice: Random) -> CowPlan:
    return plan.with_foot(photos=2)


_WAYS = {
    "sole ulcer": _ulcer,
    "dermatitis": _dermatitis,
    "white line": _white_line,
    "for the vet": _for_the_vet,
}
