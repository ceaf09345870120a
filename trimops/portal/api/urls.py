from django.urls import path

from trimops.portal.api.held_hours import (
    HeldHourApi,
    HeldHoursApi,
    HoldApi,
    LetGoHeldHourApi,
    TakeHeldHourApi,
)
from trimops.portal.api.offers import OffersApi
from trimops.portal.api.wishes import WishesApi

urlpatterns = [
    path("farms/<int:pk>/wishes/", WishesApi.as_view(), name="api_wishes"),
    path("farms/<int:pk>/offers/", OffersApi.as_view(), name="api_offers"),
    path("farms/<int:pk>/held-hours/", HoldApi.as_view(), name="api_hold"),
    path("held-hours/", HeldHoursApi.as_view(), name="api_held_hours"),
    path("held-hours/<int:pk>/", HeldHourApi.as_view(), name="api_held_hour"),
    path("held-hours/<int:pk>/take/", TakeHeldHourApi.as_view(), name="api_held_take"),
    path("held-hours/<int:pk>/let-go/", LetGoHeldHourApi.as_view(), name="api_held_let_go"),
]
