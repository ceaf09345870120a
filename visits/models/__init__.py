from visits.models.calendar_address import CalendarAddress
from visits.models.figures import BusinessFigures
from visits.models.kit import Consumable, ConsumableKind, Knife, MovementKind, Sharpening, StockMovement
from visits.models.recheck import Block, Recheck
from visits.models.trim import ClawAction, Finding, Referral, Trim, TrimmedFoot, TrimVersion
from visits.models.van import DayOff, ShiftPattern, Van
from visits.models.visit import AskedCow, Visit, VisitEvent
from visits.models.week_plan import WeekPlan, WeekPlanState

__all__ = [
    "AskedCow",
    "Block",
    "BusinessFigures",
    "CalendarAddress",
    "ClawAction",
    "Consumable",
    "ConsumableKind",
    "DayOff",
    "Finding",
    "Knife",
    "MovementKind",
    "Recheck",
    "Referral",
    "Sharpening",
    "ShiftPattern",
    "StockMovement",
    "Trim",
    "TrimVersion",
    "TrimmedFoot",
    "Van",
    "Visit",
    "VisitEvent",
    "WeekPlan",
    "WeekPlanState",
]
