from django.urls import include, path

from visits.web.by_itself_page import ByItselfPage
from visits.web.calendar_feed_page import CalendarFeed
from visits.web.calendar_pages import CalendarPage, RevokeCalendarPage
from visits.web.changed_pages import WeekChangedPage, WhatChangedPage
from visits.web.crush_app import CrushDaysPage, CrushManifest, CrushPack, CrushPage, CrushWorker
from visits.web.crush_papers import CrushPapersPage, CrushTodayPage
from visits.web.day_sheet_paper import DaySheetPaper
from visits.web.draft_pages import DraftPage
from visits.web.draft_rules_page import DraftRulesPage
from visits.web.figures_page import FiguresPage
from visits.web.herd_pages import HerdFiguresPage, HerdYearPaper
from visits.web.mobility_pages import MobilityPage
from visits.web.offer_pages import (
    FarmWhenPage,
    HeldHourPage,
    HoldOfferPage,
    LetGoOfferPage,
    TakeOfferPage,
)
from visits.web.outside_calendar_pages import ReadCalendarPage, RemoveCalendarPage, VanCalendarsPage
from visits.web.paper_pages import (
    DraftListPaper,
    ReferralLetterPaper,
    VisitReportPaper,
    VisitReportVersionPaper,
)
from visits.web.photo_page import TrimPhotoPage
from visits.web.plan_pages import (
    AcceptWeekPlanPage,
    BringBackPlanPage,
    PlanWeekPage,
    ProvePlanPage,
    StopThinkingPage,
    WeekPlanPage,
    WeekPlanProgress,
)
from visits.web.replan_pages import (
    AcceptReplanPage,
    DropReplanPage,
    FarmToldPage,
    PlanAgainstPage,
    ReplanPage,
    ReplanProgress,
)
from visits.web.report_pages import IssueLetterPage, IssueReportPage, ReportPage
from visits.web.stop_pages import LockStopPage, MoveStopPage, StopPage, StopPlacesData
from visits.web.van_pages import DayOffPage, VanBackPage, VanEditPage, VansPage
from visits.web.visit_pages import CowPage, VisitAskPage, VisitListPage, VisitPage
from visits.web.visit_steps import (
    CallOffVisitPage,
    ConfirmVisitPage,
    FinishVisitPage,
    PlanVisitPage,
    PutOffVisitPage,
    StartVisitPage,
    TellHourPage,
)
from visits.web.week_pages import ThisWeekPage

urlpatterns = [
    path("messages/", include("visits.web.messages.urls")),
    path("watch/", include("visits.web.lone_watch.urls")),
    path("kit/", include("visits.web.kit.evening_urls")),
    path("kit/", include("visits.web.kit.supply_urls")),
    path("kit/", include("visits.web.kit.blade_urls")),
    path("kit/", include("visits.web.kit.stock_urls")),
    path("by-itself/", ByItselfPage.as_view(), name="by_itself"),
    path("week/", ThisWeekPage.as_view(), name="this_week"),
    path("week/<str:week>/plan/", PlanWeekPage.as_view(), name="plan_week"),
    path("week/plans/<int:pk>/", WeekPlanPage.as_view(), name="week_plan"),
    path("week/plans/<int:pk>/state/", WeekPlanProgress.as_view(), name="week_plan_state"),
    path("week/plans/<int:pk>/accept/", AcceptWeekPlanPage.as_view(), name="week_plan_accept"),
    path("week/plans/<int:pk>/enough/", StopThinkingPage.as_view(), name="week_plan_enough"),
    path("week/plans/<int:pk>/prove/", ProvePlanPage.as_view(), name="week_plan_prove"),
    path("week/plans/<int:pk>/bring-back/", BringBackPlanPage.as_view(), name="week_plan_bring_back"),
    path("week/plans/<int:pk>/stops/<int:visit_pk>/", StopPage.as_view(), name="week_stop"),
    path(
        "week/plans/<int:pk>/stops/<int:visit_pk>/places/", StopPlacesData.as_view(), name="week_stop_places"
    ),
    path("week/plans/<int:pk>/stops/<int:visit_pk>/move/", MoveStopPage.as_view(), name="week_stop_move"),
    path("week/plans/<int:pk>/stops/<int:visit_pk>/lock/", LockStopPage.as_view(), name="week_stop_lock"),
    path("week/plans/<int:pk>/sheet/<str:shift>.pdf", DaySheetPaper.as_view(), name="day_sheet"),
    path("week/<str:week>/changed/", WeekChangedPage.as_view(), name="week_changed"),
    path("week/<str:week>/changed/<str:what>/", WhatChangedPage.as_view(), name="week_changed_what"),
    path("week/again/<int:pk>/", ReplanPage.as_view(), name="replan"),
    path("week/again/<int:pk>/state/", ReplanProgress.as_view(), name="replan_state"),
    path("week/again/<int:pk>/accept/", AcceptReplanPage.as_view(), name="replan_accept"),
    path("week/again/<int:pk>/drop/", DropReplanPage.as_view(), name="replan_drop"),
    path("week/again/<int:pk>/told/<int:visit_pk>/", FarmToldPage.as_view(), name="replan_told"),
    path("week/plan/<int:pk>/against/<int:other>/", PlanAgainstPage.as_view(), name="plan_against"),
    path("visits/", VisitListPage.as_view(), name="visit_list"),
    path("visits/ask/<int:farm_pk>/", VisitAskPage.as_view(), name="visit_ask"),
    path("visits/when/<int:farm_pk>/", FarmWhenPage.as_view(), name="farm_when"),
    path("visits/when/<int:farm_pk>/hold/", HoldOfferPage.as_view(), name="offer_hold"),
    path("visits/held/<int:pk>/", HeldHourPage.as_view(), name="held_hour"),
    path("visits/held/<int:pk>/take/", TakeOfferPage.as_view(), name="held_take"),
    path("visits/held/<int:pk>/let-go/", LetGoOfferPage.as_view(), name="held_let_go"),
    path("visits/<int:pk>/", VisitPage.as_view(), name="visit"),
    path("visits/<int:pk>/plan/", PlanVisitPage.as_view(), name="visit_plan"),
    path("visits/<int:pk>/confirm/", ConfirmVisitPage.as_view(), name="visit_confirm"),
    path("visits/<int:pk>/put-off/", PutOffVisitPage.as_view(), name="visit_put_off"),
    path("visits/<int:pk>/call-off/", CallOffVisitPage.as_view(), name="visit_call_off"),
    path("visits/<int:pk>/start/", StartVisitPage.as_view(), name="visit_start"),
    path("visits/<int:pk>/finish/", FinishVisitPage.as_view(), name="visit_finish"),
    path("visits/crush/", CrushDaysPage.as_view(), name="crush_days"),
    path("visits/crush-worker.js", CrushWorker.as_view(), name="crush_worker"),
    path("visits/crush.pack", CrushPack.as_view(), name="crush_pack"),
    path("visits/crush.webmanifest", CrushManifest.as_view(), name="crush_manifest"),
    path("visits/<int:pk>/crush/", CrushPage.as_view(), name="crush"),
    path("visits/crush/today.json", CrushTodayPage.as_view(), name="crush_today"),
    path("visits/<int:pk>/crush/papers.json", CrushPapersPage.as_view(), name="crush_papers"),
    path("visits/<int:pk>/photos/<uuid:uid>.jpg", TrimPhotoPage.as_view(), name="trim_photo"),
    path("visits/<int:pk>/report.pdf", VisitReportPaper.as_view(), name="visit_report"),
    path(
        "visits/<int:pk>/report-<int:version>.pdf",
        VisitReportVersionPaper.as_view(),
        name="visit_report_version",
    ),
    path("visits/<int:pk>/report/", ReportPage.as_view(), name="visit_report_page"),
    path("visits/<int:pk>/report/issue/", IssueReportPage.as_view(), name="visit_report_issue"),
    path("visits/<int:pk>/letters/<int:trim_pk>.pdf", ReferralLetterPaper.as_view(), name="referral_letter"),
    path("visits/<int:pk>/letters/<int:trim_pk>/issue/", IssueLetterPage.as_view(), name="referral_issue"),
    path("visits/<int:pk>/draft-list.pdf", DraftListPaper.as_view(), name="draft_list"),
    path("visits/<int:pk>/draft/", DraftPage.as_view(), name="draft"),
    path("farms/<int:farm_pk>/draft-rules/", DraftRulesPage.as_view(), name="draft_rules"),
    path("farms/<int:farm_pk>/mobility/", MobilityPage.as_view(), name="mobility"),
    path("farms/<int:farm_pk>/feet/", HerdFiguresPage.as_view(), name="herd_figures"),
    path("farms/<int:farm_pk>/feet/<int:year>.pdf", HerdYearPaper.as_view(), name="herd_year"),
    path("cows/<int:pk>/", CowPage.as_view(), name="cow"),
    path("vans/", VansPage.as_view(), name="vans"),
    path("vans/new/", VanEditPage.as_view(), name="van_new"),
    path("vans/<int:pk>/", VanEditPage.as_view(), name="van"),
    path("vans/<int:pk>/day-off/", DayOffPage.as_view(), name="day_off"),
    path("vans/<int:pk>/calendars/", VanCalendarsPage.as_view(), name="van_calendars"),
    path("vans/calendars/<int:pk>/read/", ReadCalendarPage.as_view(), name="outside_calendar_read"),
    path("vans/calendars/<int:pk>/remove/", RemoveCalendarPage.as_view(), name="outside_calendar_remove"),
    path("vans/outs/<int:pk>/back/", VanBackPage.as_view(), name="van_back"),
    path("visits/<int:pk>/told/", TellHourPage.as_view(), name="visit_told"),
    path("figures/", FiguresPage.as_view(), name="figures"),
    path("calendar/", CalendarPage.as_view(), name="calendar"),
    path("calendar/<int:pk>/close/", RevokeCalendarPage.as_view(), name="calendar_revoke"),
    path("feeds/<str:secret>.ics", CalendarFeed.as_view(), name="calendar_feed"),
]
