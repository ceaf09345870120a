"""The demo's invented figures, read from `fixtures/demo`."""

import csv
import json
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

FOLDER = Path(__file__).resolve().parents[3] / "fixtures" / "demo"


@dataclass(frozen=True)
class FarmSketch:
    """One invented farm; place in km east and north of the middle of the valley.

    `whole_herd`: every cow is trimmed at each round, over some days. `later`: what the second half of the history
    has of the lesions of the first (1: nothing changed on the farm).
    """

    name: str
    herd: int
    interval_days: int
    routine_cows: int
    east_km: float
    north_km: float
    hygiene: int
    hygiene_reason: str
    milking: str
    crush: str
    hard_standing: bool
    water: bool
    light: bool
    power: str
    shelter: str
    whole_herd: bool = False
    later: float = 1


@dataclass(frozen=True)
class HiddenLength:
    """What makes a visit and a drive as long as they really are; told neither to the planning figures nor to learning.

    Minutes, shares, and spreads of a factor's logarithm; `wash_down` by hygiene level 0 to 3.
    """

    trimmer_spread: float
    weather_spread: float
    open_yard: float
    wait_minutes: float
    wait_farm_spread: float
    cow_gap: float
    flow_farm_spread: float
    horn_farm_spread: float
    helper_there: float
    gap_without_help: float
    foot_cut: float
    foot_looked_at: float
    lesion_by_severity: tuple[float, ...]
    block: float
    wrap: float
    cow_spread: float
    fresh_cows: int
    tired_per_cow: float
    set_up_brought: float
    set_up_on_site: float
    no_hard_standing: float
    no_power: float
    no_light: float
    pack_up: float
    wash_down: tuple[float, ...]
    wash_without_water: float
    odd_jobs_spread: float
    kit_trouble: float
    kit_trouble_minutes: float
    traffic_spread: float
    leave_late_minutes: float
    meal_shortest: float
    meal_longest: float


@dataclass(frozen=True)
class Rates:
    """The rates of `rates.json`, where each has its source."""

    any_lesion: float
    lesion_shares: Mapping[str, float]
    white_line_abscess_share: float
    hind_share: float
    hind_outer_share: float
    fore_inner_share: float
    severity_shares: tuple[float, ...]
    stage_shares: Mapping[str, float]
    herd_spread: float
    cow_spread: float
    same_place_again: float
    block_per_ulcer: float
    block_kinds: Mapping[str, float]
    healed_at_recheck: float
    healed_with_block: float
    farm_looks_itself: float
    fore_feet_lifted: float
    walks_lame: float
    urgent_per_cow_year: float
    leaves_per_cow_year: float
    scored_lame: float
    scored_lame_spread: float
    season: Mapping[str, tuple[float, ...]]
    hidden_length: HiddenLength
    called_off: float


@cache
def rates() -> Rates:
    """Every rate of the demo."""
    told = {key: item["value"] for key, item in _read("rates.json").items() if key != "note"}
    told["hidden_length"] = HiddenLength(**told["hidden_length"])
    return Rates(**told)


@cache
def farm_sketches() -> tuple[FarmSketch, ...]:
    """The forty farms, in the order of the file."""
    with (FOLDER / "farms.csv").open(encoding="utf-8", newline="") as file:
        return tuple(_farm(row) for row in csv.DictReader(file))


def _farm(row: dict[str, str]) -> FarmSketch:
    return FarmSketch(
        name=row["name"],
        herd=int(row["herd"]),
        interval_days=int(row["interval_days"]),
        routine_cows=int(row["routine_cows"]),
        east_km=float(row["east_km"]),
        north_km=float(row["north_km"]),
        hygiene=int(row["hygiene"]),
        hygiene_reason=row["hygiene_reason"],
        milking=row["milking"],
        crush=row["crush"],
        hard_standing=row["hard_standing"] == "1",
        water=row["water"] == "1",
        light=row["light"] == "1",
        power=row["power"],
        shelter=row["shelter"],
        whole_herd=row["whole_herd"] == "1",
        later=float(row["later"]),
    )


def _read(name: str) -> dict[str, dict]:  # type: ignore[type-arg]
    found: dict[str, dict] = json.loads((FOLDER / name).read_text(encoding="utf-8"))  # type: ignore[type-arg]
    return found
