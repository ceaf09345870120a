from visits.models.calendar_address import CalendarAddress
from visits.models.crush import AddedCow, CrushWriting, TrimPhoto, WashDown
from visits.models.draft import DraftChange, DraftChoice, DraftKind
from visits.models.figures import BusinessFigures
from visits.models.held_hour import HeldCow, HeldHour, HeldState
from visits.models.invitation import Invitation
from visits.models.issued_paper import IssuedReport, ReferralLetter
from visits.models.kit.blade import Blade, BladeEvent, BladeSaid, BladeTurn, Sharpening
from visits.models.kit.consumable import Consumable, UseRule
from visits.models.kit.stock import (
    StockCount,
    StockLot,
    StockMovement,
    StockPlace,
    SupplyLine,
    SupplyOrder,
    TypedWeather,
)
from visits.models.learned_lengths import LearnedLengths
from visits.models.lone_watch import LoneWatch, WatchCall, WatchContact, WatchEvent, WatchRules
from visits.models.message import MessageRules, MessageText, VisitMessage
from visits.models.mobility import MobilityScore, MobilityScoring
from visits.models.outside_calendar import OutsideBusy, OutsideCalendar
from visits.models.plan_lock import PlanLock
from visits.models.recheck import Block, Recheck
from visits.models.road_leg import RoadLeg, RoadTrouble
from visits.models.trim import ClawAction, Finding, Referral, Trim, TrimmedFoot
from visits.models.van import DayOff, ShiftPattern, Van
from visits.models.van_out import OutBecause, VanOut
from visits.models.visit import AskedCow, Visit, VisitEvent
from visits.models.week_plan import PlanMaker, WeekPlan, WeekPlanState

__all__ = [
    "AddedCow",
    "AskedCow",
    "Blade",
    "BladeEvent",
    "BladeSaid",
    "BladeTurn",
    "Block",
    "BusinessFigures",
    "CalendarAddress",
    "ClawAction",
    "Consumable",
    "CrushWriting",
    "DayOff",
    "DraftChange",
    "DraftChoice",
    "DraftKind",
    "Finding",
    "HeldCow",
    "HeldHour",
    "HeldState",
    "Invitation",
    "IssuedReport",
    "LearnedLengths",
    "LoneWatch",
    "MessageRules",
    "MessageText",
    "MobilityScore",
    "MobilityScoring",
    "OutBecause",
    "OutsideBusy",
    "OutsideCalendar",
    "PlanLock",
    "PlanMaker",
    "Recheck",
    "Referral",
    "ReferralLetter",
    "RoadLeg",
    "RoadTrouble",
    "Sharpening",
    "ShiftPattern",
    "StockCount",
    "StockLot",
    "StockMovement",
    "StockPlace",
    "SupplyLine",
    "SupplyOrder",
    "Trim",
    "TrimPhoto",
    "TrimmedFoot",
    "TypedWeather",
    "UseRule",
    "Van",
    "VanOut",
    "Visit",
    "VisitEvent",
    "VisitMessage",
    "WashDown",
    "WatchCall",
    "WatchContact",
    "WatchEvent",
    "WatchRules",
    "WeekPlan",
    "WeekPlanState",
]
