"""Addresses of the API: the kit, knives and vans, and a farm's data as files."""

from django.urls import path

from visits.api.farm_files import FarmAde, FarmTablesCsv, FarmTablesXlsx
from visits.api.kit.bevel import BevelApi
from visits.api.kit.blades import BladeApi, BladesApi, BladeStateApi, EdgesApi
from visits.api.kit.evening import TonightApi, WashApi, WashDownsApi, WeatherApi
from visits.api.kit.figures import FiguresApi
from visits.api.kit.items import ConsumableApi, ConsumablesApi, StockPlacesApi
from visits.api.kit.kit_list import KitFileApi, KitListLookApi, KitListReadApi
from visits.api.kit.sharpening import SharpenApi, SharpeningsApi
from visits.api.kit.stock import LedgerApi, LotsApi, StockApi
from visits.api.kit.stock_moves import PurchasesApi, StockCountsApi, StockMovesApi, WriteOffsApi
from visits.api.kit.supply import (
    OrderArrivedApi,
    OrderCalledOffApi,
    OrderLineClosedApi,
    OrderListApi,
    SupplyOrderApi,
    SupplyOrdersApi,
)
from visits.api.kit.van_check import LoadVanApi, VanCheckApi
from visits.api.kit.vans import DayOffApi, VanApi, VanBackApi, VanOutApi, VansApi

urlpatterns = [
    path("kit/places/", StockPlacesApi.as_view(), name="api_stock_places"),
    path("kit/consumables/", ConsumablesApi.as_view(), name="api_consumables"),
    path("kit/consumables/<int:pk>/", ConsumableApi.as_view(), name="api_consumable"),
    path("kit/consumables/<int:pk>/lots/", LotsApi.as_view(), name="api_lots"),
    path("kit/consumables/<int:pk>/ledger/", LedgerApi.as_view(), name="api_ledger"),
    path("kit/stock/", StockApi.as_view(), name="api_stock"),
    path("kit/purchases/", PurchasesApi.as_view(), name="api_purchases"),
    path("kit/moves/", StockMovesApi.as_view(), name="api_stock_moves"),
    path("kit/counts/", StockCountsApi.as_view(), name="api_stock_counts"),
    path("kit/write-offs/", WriteOffsApi.as_view(), name="api_write_offs"),
    path("kit/order-list/", OrderListApi.as_view(), name="api_order_list"),
    path("kit/orders/", SupplyOrdersApi.as_view(), name="api_orders"),
    path("kit/orders/<int:pk>/", SupplyOrderApi.as_view(), name="api_order"),
    path("kit/orders/<int:pk>/arrived/", OrderArrivedApi.as_view(), name="api_order_arrived"),
    path("kit/orders/<int:pk>/call-off/", OrderCalledOffApi.as_view(), name="api_order_called_off"),
    path("kit/order-lines/<int:pk>/close/", OrderLineClosedApi.as_view(), name="api_order_line_closed"),
    path("kit/tonight/", TonightApi.as_view(), name="api_tonight"),
    path("kit/wash/", WashApi.as_view(), name="api_wash"),
    path("kit/wash-downs/", WashDownsApi.as_view(), name="api_wash_downs"),
    path("kit/weather/", WeatherApi.as_view(), name="api_weather"),
    path("kit/blades/", BladesApi.as_view(), name="api_blades"),
    path("kit/blades/<int:pk>/", BladeApi.as_view(), name="api_blade"),
    path("kit/blades/<int:pk>/state/", BladeStateApi.as_view(), name="api_blade_state"),
    path("kit/bevel/", BevelApi.as_view(), name="api_bevel"),
    path("kit/edges/", EdgesApi.as_view(), name="api_edges"),
    path("kit/sharpenings/", SharpeningsApi.as_view(), name="api_sharpenings"),
    path("kit/sharpen/", SharpenApi.as_view(), name="api_sharpen"),
    path("kit/lists/look/", KitListLookApi.as_view(), name="api_kit_list_look"),
    path("kit/lists/", KitListReadApi.as_view(), name="api_kit_list_read"),
    path("kit/files/<str:what>/", KitFileApi.as_view(), name="api_kit_file"),
    path("vans/", VansApi.as_view(), name="api_vans"),
    path("vans/<int:pk>/", VanApi.as_view(), name="api_van"),
    path("vans/<int:pk>/check/", VanCheckApi.as_view(), name="api_van_check"),
    path("vans/<int:pk>/load/", LoadVanApi.as_view(), name="api_van_load"),
    path("vans/<int:pk>/days-off/", DayOffApi.as_view(), name="api_day_off"),
    path("vans/<int:pk>/outs/", VanOutApi.as_view(), name="api_van_out"),
    path("van-outs/<int:pk>/end/", VanBackApi.as_view(), name="api_van_back"),
    path("farms/<int:pk>/data/csv/", FarmTablesCsv.as_view(), name="api_farm_csv"),
    path("farms/<int:pk>/data/xlsx/", FarmTablesXlsx.as_view(), name="api_farm_xlsx"),
    path("farms/<int:pk>/data/ade/", FarmAde.as_view(), name="api_farm_ade"),
    path("figures/", FiguresApi.as_view(), name="api_figures"),
]
