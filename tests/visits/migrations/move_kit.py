"""Walks a database of its own from the older tables of the kit to the newer ones and back; prints what it finds."""

import json
import os
from datetime import UTC, date, datetime
from decimal import Decimal

import django

os.environ["DJANGO_SETTINGS_MODULE"] = "trimops.settings.test"
django.setup()

from django.db import connection  # noqa: E402
from django.db.migrations.executor import MigrationExecutor  # noqa: E402

BEFORE, AFTER = [("visits", "0004_farm_papers")], [("visits", "0007_kit_settled")]
AT = datetime(2026, 3, 2, 12, tzinfo=UTC)


def walk_to(place):
    """Migrate and give the tables as they are there."""
    executor = MigrationExecutor(connection)
    executor.migrate(place)
    return MigrationExecutor(connection).loader.project_state(place).apps


def fill(apps):
    """A business with a van: blocks with a recipe, stock in yard and van, a cow's use, a count, two knives."""

    def make(table, app="visits", /, **words):
        return apps.get_model(app, table).objects.create(**words)

    business = make("Business", "accounts", name="Ash & Rye")
    user = make("User", "accounts", email="a@example.invalid", name="A")
    make("Membership", "accounts", business=business, user=user, role="owner", invited_at=AT)
    here = {"base_latitude": 54, "base_longitude": -2}
    van = make("Van", business=business, name="Store", trimmer=user, **here)
    wood = make("Consumable", business=business, name="Wood", kind="block", unit="each", block_kind="wood")
    glue = make(
        "Consumable", business=business, name="Glue", kind="glue", unit="ml", used_per_block=Decimal(40)
    )
    make("Consumable", business=business, name="Wrap", kind="wrap", unit="each")
    line = {"business": business, "consumable": wood, "at": AT}
    make("StockMovement", kind="bought", quantity=40, cost=Decimal(80), **line)
    make("StockMovement", kind="bought", quantity=10, van=van, **line)
    make("StockMovement", kind="used", quantity=-3, van=van, **line)
    make("StockMovement", kind="counted", quantity=-2, van=van, **line)
    make("StockMovement", kind="used", quantity=-120, van=van, **{**line, "consumable": glue})
    old = make("Knife", business=business, van=van, name="Old", bought_on=date(2025, 1, 1))
    old.retired_on = date(2025, 6, 1)
    old.save()
    knife = make("Knife", business=business, van=van, name="Blue", bought_on=date(2025, 1, 1))
    make("Sharpening", business=business, knife=knife, at=AT, cows_since_last=20)


def newer(apps):
    """What the newer tables say."""
    rows = lambda name: apps.get_model("visits", name).objects.order_by("pk")  # noqa: E731
    return {
        "stock": [
            [row.place.name, row.kind, str(row.quantity), row.use_of, row.lot is not None]
            for row in rows("StockMovement")
        ],
        "counted": [[row.place.name, str(row.counted)] for row in rows("StockCount")],
        "recipes": [
            [row.consumable.name, row.per, row.block_kind, str(row.quantity)] for row in rows("UseRule")
        ],
        "blades": [[row.name, row.state, str(row.state_since.date())] for row in rows("Blade")],
        "edges": [[row.blade.name, row.cows_since_last] for row in rows("Sharpening")],
    }


def older(apps):
    """What the older tables say after the way back."""
    rows = lambda name: apps.get_model("visits", name).objects.order_by("pk")  # noqa: E731
    return {
        "stock": [[row.van_id, row.kind, str(row.quantity)] for row in rows("StockMovement")],
        "items": [[row.name, row.block_kind, str(row.used_per_block)] for row in rows("Consumable")],
        "knives": [[row.name, str(row.retired_on)] for row in rows("Knife")],
    }


if __name__ == "__main__":
    fill(walk_to(BEFORE))
    there = newer(walk_to(AFTER))
    print(json.dumps({"there": there, "back": older(walk_to(BEFORE))}))
