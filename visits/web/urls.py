from django.urls import path

from visits.web.calendar_pages import CalendarFeed, CalendarPage, RevokeCalendarPage
from visits.web.crush_page import CrushCowPage, CrushListPage
from visits.web.figures_page import FiguresPage
from visits.web.paper_pages import DraftListPaper, VisitReportPaper
from visits.web.van_pages import DayOffPage, VanEditPage, VansPage
from visits.web.visit_pages import CowPage, VisitAskPage, VisitListPage, VisitPage
from visits.web.visit_steps import (
    CallOffVisitPage,
    ConfirmVisitPage,
    FinishVisitPage,
    PlanVisitPage,
    PutOffVisitPage,
    StartVisitPage,
)
from visits.web.week_pages import (
    AcceptWeekPlanPage,
    PlanWeekPage,
    ThisWeekPage,
    WeekPlanPage,
    WeekPlanProgress,
)

urlpatterns = [
    path("week/", ThisWeekPage.as_view(), name="this_week"),
    path("week/<str:week>/plan/", PlanWeekPage.as_view(), name="plan_week"),
    path("week/plans/<int:pk>/", WeekPlanPage.as_view(), name="week_plan"),
    path("week/plans/<int:pk>/state/", WeekPlanProgress.as_view(), name="week_plan_state"),
    path("week/plans/<int:pk>/accept/", AcceptWeekPlanPage.as_view(), name="week_plan_accept"),
    path("visits/", VisitListPage.as_view(), name="visit_list"),
    path("visits/ask/<int:farm_pk>/", VisitAskPage.as_view(), name="visit_ask"),
    path("visits/<int:pk>/", VisitPage.as_view(), name="visit"),
    path("visits/<int:pk>/plan/", PlanVisitPage.as_view(), name="visit_plan"),
    path("visits/<int:pk>/confirm/", ConfirmVisitPage.as_view(), name="visit_confirm"),
    path("visits/<int:pk>/put-off/", PutOffVisitPage.as_view(), name="visit_put_off"),
    path("visits/<int:pk>/call-off/", CallOffVisitPage.as_view(), name="visit_call_off"),
    path("visits/<int:pk>/start/", StartVisitPage.as_view(), name="visit_start"),
    path("visits/<int:pk>/finish/", FinishVisitPage.as_view(), name="visit_finish"),
    path("visits/<int:pk>/crush/", CrushListPage.as_view(), name="crush"),
    path("visits/<int:pk>/crush/<int:cow_pk>/", CrushCowPage.as_view(), name="crush_cow"),
    path("visits/<int:pk>/report.pdf", VisitReportPaper.as_view(), name="visit_report"),
    path("visits/<int:pk>/draft-list.pdf", DraftListPaper.as_view(), name="draft_list"),
    path("cows/<int:pk>/", CowPage.as_view(), name="cow"),
    path("vans/", VansPage.as_view(), name="vans"),
    path("vans/new/", VanEditPage.as_view(), name="van_new"),
    path("vans/<int:pk>/", VanEditPage.as_view(), name="van"),
    path("vans/<int:pk>/day-off/", DayOffPage.as_view(), name="day_off"),
    path("figures/", FiguresPage.as_view(), name="figures"),
    path("calendar/", CalendarPage.as_view(), name="calendar"),
    path("calendar/<int:pk>/close/", RevokeCalendarPage.as_view(), name="calendar_revoke"),
    path("feeds/<str:secret>.ics", CalendarFeed.as_view(), name="calendar_feed"),
]
