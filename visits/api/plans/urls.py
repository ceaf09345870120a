from django.urls import path

from visits.api.plans.happenings import (
    FarmCallsOffApi,
    LameCowApi,
    RunningLateApi,
    TrimmerIllApi,
    VanOutApi,
)
from visits.api.plans.plan_changes import PlanAgainstApi, PlanChangeApi
from visits.api.plans.plan_stops import LockStopApi, MoveStopApi, StopPlacesApi, UnlockStopApi
from visits.api.plans.week_plans import (
    AcceptPlanApi,
    BringBackPlanApi,
    DaySheetApi,
    DropPlanApi,
    PlanApi,
    PlanProblemApi,
    PlansApi,
    ProvePlanApi,
    StopThinkingApi,
    WeekPlansApi,
    WeekProblemApi,
)

WEEK, STOP = "weeks/<str:week>", "plans/<int:pk>/stops/<int:visit_pk>"

urlpatterns = [
    path("plans/", PlansApi.as_view(), name="api_plans"),
    path("plans/<int:pk>/", PlanApi.as_view(), name="api_plan"),
    path("plans/<int:pk>/problem/", PlanProblemApi.as_view(), name="api_plan_problem"),
    path("plans/<int:pk>/enough/", StopThinkingApi.as_view(), name="api_plan_enough"),
    path("plans/<int:pk>/prove/", ProvePlanApi.as_view(), name="api_plan_prove"),
    path("plans/<int:pk>/accept/", AcceptPlanApi.as_view(), name="api_plan_accept"),
    path("plans/<int:pk>/bring-back/", BringBackPlanApi.as_view(), name="api_plan_bring_back"),
    path("plans/<int:pk>/drop/", DropPlanApi.as_view(), name="api_plan_drop"),
    path("plans/<int:pk>/change/", PlanChangeApi.as_view(), name="api_plan_change"),
    path("plans/<int:pk>/against/<int:other>/", PlanAgainstApi.as_view(), name="api_plan_against"),
    path("plans/<int:pk>/sheets/<str:shift>/pdf/", DaySheetApi.as_view(), name="api_day_sheet"),
    path(f"{STOP}/places/", StopPlacesApi.as_view(), name="api_stop_places"),
    path(f"{STOP}/move/", MoveStopApi.as_view(), name="api_stop_move"),
    path(f"{STOP}/lock/", LockStopApi.as_view(), name="api_stop_lock"),
    path(f"{STOP}/unlock/", UnlockStopApi.as_view(), name="api_stop_unlock"),
    path(f"{WEEK}/plans/", WeekPlansApi.as_view(), name="api_week_plans"),
    path(f"{WEEK}/problem/", WeekProblemApi.as_view(), name="api_week_problem"),
    path(f"{WEEK}/happenings/late/", RunningLateApi.as_view(), name="api_happening_late"),
    path(f"{WEEK}/happenings/van-out/", VanOutApi.as_view(), name="api_happening_out"),
    path(f"{WEEK}/happenings/ill/", TrimmerIllApi.as_view(), name="api_happening_ill"),
    path(f"{WEEK}/happenings/called-off/", FarmCallsOffApi.as_view(), name="api_happening_off"),
    path(f"{WEEK}/happenings/lame/", LameCowApi.as_view(), name="api_happening_lame"),
]
