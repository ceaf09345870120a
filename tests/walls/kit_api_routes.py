"""The rows of tests/walls/routes.py for the API of the kit, knives and vans, and of a farm's data as files."""

from tests.walls.route import Route
from trimops.accounts.actions import Action
from trimops.accounts.roles import EVERYONE

KIT_API: dict[str, Route] = {
    "api_stock_places": Route(EVERYONE, does={"get": Action.SEE_KIT}),
    "api_consumables": Route(EVERYONE, does={"get": Action.SEE_KIT, "post": Action.KEEP_KIT}),
    "api_consumable": Route(
        EVERYONE, {"pk": "consumable"}, does={"get": Action.SEE_KIT, "patch": Action.KEEP_KIT}
    ),
    "api_lots": Route(EVERYONE, {"pk": "consumable"}, does={"get": Action.SEE_KIT}),
    "api_ledger": Route(EVERYONE, {"pk": "consumable"}, does={"get": Action.SEE_KIT}),
    "api_stock": Route(EVERYONE, does={"get": Action.SEE_KIT}),
    "api_purchases": Route(EVERYONE, does={"post": Action.KEEP_KIT}),
    "api_stock_moves": Route(EVERYONE, does={"post": Action.KEEP_KIT}),
    "api_stock_counts": Route(EVERYONE, does={"post": Action.COUNT_KIT}),
    "api_write_offs": Route(EVERYONE, does={"post": Action.KEEP_KIT}),
    "api_order_list": Route(EVERYONE, does={"get": Action.SEE_KIT}),
    "api_orders": Route(EVERYONE, does={"get": Action.SEE_KIT, "post": Action.KEEP_KIT}),
    "api_order": Route(EVERYONE, {"pk": "supply_order"}, does={"get": Action.SEE_KIT}),
    "api_order_arrived": Route(EVERYONE, {"pk": "supply_order"}, does={"post": Action.KEEP_KIT}),
    "api_order_called_off": Route(EVERYONE, {"pk": "supply_order"}, does={"post": Action.KEEP_KIT}),
    "api_order_line_closed": Route(EVERYONE, {"pk": "supply_line"}, does={"post": Action.KEEP_KIT}),
    "api_tonight": Route(EVERYONE, does={"get": Action.SEE_KIT}),
    "api_wash": Route(EVERYONE, does={"get": Action.SEE_KIT}),
    "api_wash_downs": Route(EVERYONE, does={"get": Action.SEE_KIT}),
    "api_weather": Route(EVERYONE, does={"get": Action.SEE_KIT, "post": Action.COUNT_KIT}),
    "api_blades": Route(EVERYONE, does={"get": Action.SEE_KNIVES, "post": Action.KEEP_KNIVES}),
    "api_blade": Route(
        EVERYONE, {"pk": "blade"}, does={"get": Action.SEE_KNIVES, "patch": Action.KEEP_KNIVES}
    ),
    "api_blade_state": Route(EVERYONE, {"pk": "blade"}, does={"post": Action.KEEP_KNIVES}),
    "api_bevel": Route(EVERYONE, does={"get": Action.SEE_KNIVES}),
    "api_edges": Route(EVERYONE, does={"get": Action.SEE_KNIVES}),
    "api_sharpenings": Route(EVERYONE, does={"get": Action.SEE_KNIVES}),
    "api_sharpen": Route(EVERYONE, does={"post": Action.KEEP_KNIVES}),
    "api_kit_list_look": Route(EVERYONE, does={"post": Action.KEEP_KIT}),
    "api_kit_list_read": Route(EVERYONE, does={"post": Action.KEEP_KIT}),
    "api_kit_file": Route(EVERYONE, fixed={"what": "consumables"}, does={"get": Action.SEE_KIT}),
    "api_vans": Route(EVERYONE, does={"get": Action.SEE_VANS, "post": Action.KEEP_VANS}),
    "api_van": Route(EVERYONE, {"pk": "van"}, does={"get": Action.SEE_VANS, "patch": Action.KEEP_VANS}),
    "api_van_check": Route(EVERYONE, {"pk": "van"}, does={"get": Action.SEE_KIT}),
    "api_van_load": Route(EVERYONE, {"pk": "van"}, does={"post": Action.KEEP_KIT}),
    "api_day_off": Route(EVERYONE, {"pk": "van"}, does={"post": Action.KEEP_VANS}),
    "api_van_out": Route(EVERYONE, {"pk": "van"}, does={"post": Action.KEEP_VANS}),
    "api_van_back": Route(EVERYONE, {"pk": "van_out"}, does={"post": Action.KEEP_VANS}),
    "api_farm_csv": Route(EVERYONE, {"pk": "farm"}, does={"get": Action.TAKE_DATA_OUT}),
    "api_farm_xlsx": Route(EVERYONE, {"pk": "farm"}, does={"get": Action.TAKE_DATA_OUT}),
    "api_farm_ade": Route(EVERYONE, {"pk": "farm"}, does={"get": Action.TAKE_DATA_OUT}),
    "api_figures": Route(EVERYONE, does={"get": Action.KEEP_FIGURES}),
}
