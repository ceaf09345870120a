"""Addresses of the kit: the evening."""

from django.urls import path

from visits.web.kit.tonight_page import TonightPage
from visits.web.kit.wash_pages import WashPage

urlpatterns = [
    path("tonight/", TonightPage.as_view(), name="kit_tonight"),
    path("wash/", WashPage.as_view(), name="kit_wash"),
]
