from visits.models.calendar_address import CalendarAddress
from visits.models.crush import AddedCow, CrushWriting, TrimPhoto, WashDown
from visits.models.draft import DraftChange, DraftChoice, DraftKind
from visits.models.figures import BusinessFigures
from visits.models.held_hour import HeldCow, HeldHour, HeldState
from visits.models.issued_paper import IssuedReport, ReferralLetter
from visits.models.kit import Consumable, ConsumableKind, Knife, MovementKind, Sharpening, StockMovement
from visits.models.learned_lengths import LearnedLengths
from visits.models.mobility import MobilityScore, MobilityScoring
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
    "Block",
    "BusinessFigures",
    "CalendarAddress",
    "ClawAction",
    "Consumable",
    "ConsumableKind",
    "CrushWriting",
    "DayOff",
    "DraftChange",
    "DraftChoice",
    "DraftKind",
    "Finding",
    "HeldCow",
    "HeldHour",
    "HeldState",
    "IssuedReport",
    "Knife",
    "LearnedLengths",
    "MobilityScore",
    "MobilityScoring",
    "MovementKind",
    "OutBecause",
    "PlanLock",
    "PlanMaker",
    "Recheck",
    "Referral",
    "ReferralLetter",
    "RoadLeg",
    "RoadTrouble",
    "Sharpening",
    "ShiftPattern",
    "StockMovement",
    "Trim",
    "TrimPhoto",
    "TrimmedFoot",
    "Van",
    "VanOut",
    "Visit",
    "VisitEvent",
    "WashDown",
    "WeekPlan",
    "WeekPlanState",
]
