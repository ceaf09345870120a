"""Addresses of the kit: orders and the van."""

from django.urls import path

from visits.web.kit.order_pages import (
    OrderArrivedPage,
    OrderOffPage,
    OrderPage,
    OrderPlacePage,
    OrdersPage,
)
from visits.web.kit.van_check_pages import LoadPage, VanCheckPage, WeatherPage

urlpatterns = [
    path("orders/", OrdersPage.as_view(), name="kit_orders"),
    path("orders/place/", OrderPlacePage.as_view(), name="kit_order_place"),
    path("orders/<int:pk>/", OrderPage.as_view(), name="kit_order"),
    path("orders/<int:pk>/arrived/", OrderArrivedPage.as_view(), name="kit_order_arrived"),
    path("orders/<int:pk>/off/", OrderOffPage.as_view(), name="kit_order_off"),
    path("vans/<int:pk>/check/", VanCheckPage.as_view(), name="kit_van_check"),
    path("vans/<int:pk>/load/", LoadPage.as_view(), name="kit_load"),
    path("vans/<int:pk>/weather/", WeatherPage.as_view(), name="kit_weather"),
]
