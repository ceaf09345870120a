"""Addresses of the kit: the stock."""

from django.urls import URLPattern, path

from visits.web.kit.count_page import CountPage
from visits.web.kit.glance_page import KitPage
from visits.web.kit.item_edit_page import ItemEditPage
from visits.web.kit.item_page import ItemPage
from visits.web.kit.kit_csv_page import KitCsvPage
from visits.web.kit.read_in_page import ReadInPage
from visits.web.kit.stock_pages import BoughtPage, MovedPage, WrittenOffPage

urlpatterns: list[URLPattern] = [
    path("", KitPage.as_view(), name="kit"),
    path("items/new/", ItemEditPage.as_view(), name="kit_item_new"),
    path("items/<int:pk>/", ItemPage.as_view(), name="kit_item"),
    path("items/<int:pk>/edit/", ItemEditPage.as_view(), name="kit_item_edit"),
    path("bought/", BoughtPage.as_view(), name="kit_bought"),
    path("moved/", MovedPage.as_view(), name="kit_moved"),
    path("places/<int:pk>/count/", CountPage.as_view(), name="kit_count"),
    path("written-off/", WrittenOffPage.as_view(), name="kit_written_off"),
    path("read-in/", ReadInPage.as_view(), name="kit_read_in"),
    path("<str:what>.csv", KitCsvPage.as_view(), name="kit_csv"),
]
