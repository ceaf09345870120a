"""Addresses of the kit: knives and discs."""

from django.urls import path

from visits.web.kit.blade_pages import BladeEditPage, BladePage, BladesPage, BladeStatePage
from visits.web.kit.sharpened_page import SharpenedPage

urlpatterns = [
    path("blades/", BladesPage.as_view(), name="blades"),
    path("blades/new/", BladeEditPage.as_view(), name="blade_new"),
    path("blades/sharpened/", SharpenedPage.as_view(), name="blade_sharpened"),
    path("blades/<int:pk>/", BladePage.as_view(), name="blade"),
    path("blades/<int:pk>/edit/", BladeEditPage.as_view(), name="blade_edit"),
    path("blades/<int:pk>/state/", BladeStatePage.as_view(), name="blade_state"),
]
