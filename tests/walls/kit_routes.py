"""The rows of tests/walls/routes.py for the kit, a table for each part."""

from tests.walls.route import Route
from trimops.accounts.roles import STAFF, Role

CRUSH = frozenset({Role.OWNER, Role.TRIMMER})

STOCK: dict[str, Route] = {
    "kit": Route(STAFF, only="get"),
    "kit_item_new": Route(STAFF),
    "kit_item": Route(STAFF, {"pk": "consumable"}, only="get"),
    "kit_item_edit": Route(STAFF, {"pk": "consumable"}),
    "kit_bought": Route(STAFF),
    "kit_moved": Route(STAFF),
    "kit_count": Route(CRUSH, {"pk": "stock_place"}),
    "kit_written_off": Route(STAFF),
    "kit_read_in": Route(STAFF),
    "kit_csv": Route(STAFF, fixed={"what": "consumables"}, only="get"),
}
SUPPLY: dict[str, Route] = {
    "kit_orders": Route(STAFF, only="get"),
    "kit_order_place": Route(STAFF, answer=405),
    "kit_order": Route(STAFF, {"pk": "supply_order"}, only="get"),
    "kit_order_arrived": Route(STAFF, {"pk": "supply_order"}, answer=405),
    "kit_order_off": Route(STAFF, {"pk": "supply_order"}, answer=405),
    "kit_van_check": Route(STAFF, {"pk": "van"}, only="get"),
    "kit_load": Route(STAFF, {"pk": "van"}, answer=405),
    "kit_weather": Route(CRUSH, {"pk": "van"}, answer=405),
}
BLADES: dict[str, Route] = {
    "blades": Route(STAFF, only="get"),
    "blade": Route(STAFF, {"pk": "blade"}, only="get"),
    "blade_new": Route(CRUSH),
    "blade_edit": Route(CRUSH, {"pk": "blade"}),
    "blade_state": Route(CRUSH, {"pk": "blade"}),
    "blade_sharpened": Route(CRUSH),
}
EVENING: dict[str, Route] = {"kit_tonight": Route(STAFF, only="get"), "kit_wash": Route(STAFF, only="get")}

KIT = {**STOCK, **SUPPLY, **BLADES, **EVENING}

__all__ = ["CRUSH", "KIT", "STAFF"]
