"""How a business's own figures are called on the page where it sets them."""

from visits.domain.actions import BlockKind
from visits.domain.lesions import LesionCode

WORDS = {
    "set_up_brought": "Setting up a crush brought along, minutes",
    "set_up_on_site": "Setting up a crush that stands there, minutes",
    "pack_up": "Packing up, minutes",
    "functional_cow": "A cow, usual trim, minutes",
    "corrective_cow": "A lame cow, minutes",
    "wash_down": "Washing down, minutes",
    "wash_down_dermatitis": "Washing down after digital dermatitis, minutes",
    "wash_down_restricted": "Washing down at a restricted farm, minutes",
    "no_hard_standing": "More without hard standing, minutes",
    "no_water": "More without water, minutes",
    "no_power": "More without power, minutes",
    "no_light": "More without light, minutes",
    "lame_trim": "Lame cow without a block",
    "shortest_wall_mm": "Shortest front wall before a “sure?”, mm",
    "wall_measured_from": "The wall is measured from",
    "toe_angle_from": "Toe angle, from °",
    "toe_angle_to": "Toe angle, to °",
    "belly_band_minutes": "Belly band: a word after minutes",
    "feet_lifted": "Feet lifted of a sound cow",
    "service_percent": "Chance of not running out, %",
    "review_days": "Days that an order lasts beyond the next one",
    "dull_percent": "Chance of an edge going dull mid-visit that you accept, %",
    "cows_per_edge": "Cows that an edge is counted on for at first",
    "late_per_day_routine": "Routine visit, each day late",
    "late_per_day_recheck": "Re-check, each day late",
    "late_per_day_urgent": "Urgent visit, each day late",
    "leave_out_routine": "Routine visit left for another week",
    "leave_out_recheck": "Re-check left for another week",
    "leave_out_per_cow": "More for each cow left for another week",
    "change_visit": "Planned again: each visit that changes day or van",
    "change_told_hour": "Planned again: each hour a farm was told and that moves",
    "change_told_minutes": "A told hour may slip without a word, minutes",
    "circuity": "Road length to straight line",
    "kmh": "Speed of a van, km/h",
    "minutes_per_leg": "Getting away and parking, minutes each drive",
    "lane_km": "Lanes at both ends of a drive, km in all",
    "lane_kmh": "Speed on lanes, km/h",
    "main_road_after_km": "Main roads from this many km of a drive",
    "main_road_kmh": "Speed on main roads, km/h",
    "trailer": "With the trailer, times a car’s time by road",
    "own_drives": "Your own drives against the plan",
    "hold_minutes": "An hour offered to a farm is held, minutes",
    "earliest_hour": "Earliest hour of work",
    "latest_hour": "Latest hour of work",
}


def words_for(name: str) -> str:
    """`"block.wood"` is "Wooden block", `"lesion.SU"` "Sole ulcer", `"kmh"` "Speed of a van, km/h"."""
    kind, _, value = name.partition(".")
    if kind == "block":
        return BlockKind(value).label.capitalize()
    if kind == "lesion":
        return LesionCode(value).label.capitalize()
    # A figure added later still has a name here, if a plain one.
    return WORDS.get(name, name.replace("_", " ").capitalize())
