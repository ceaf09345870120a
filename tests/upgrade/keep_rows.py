"""`python -m tests.upgrade.keep_rows`, run in the tree of a release: keeps a database of that release for later ones.

Writes fixtures/upgrade/from.json (how far each app had been migrated, and which row is what) and rows.json.gz (every
row of a business that holds one of everything). At a release, run it and commit both; nothing else is needed
until the next one, however many migrations come: tests/upgrade walks from these to the newest.
"""

import base64
import gzip
import json
import os
import tempfile
from pathlib import Path

import django

os.environ["DJANGO_SETTINGS_MODULE"] = "trimops.settings.test"
os.environ["TRIMOPS_DATA_DIR"] = tempfile.mkdtemp(prefix="trimops-keep-rows-")
os.environ.pop("DATABASE_URL", None)
os.environ.pop("REDIS_URL", None)
django.setup()

from django.apps import apps  # noqa: E402
from django.core.management import call_command  # noqa: E402
from django.db import connection, models  # noqa: E402
from django.db.migrations.loader import MigrationLoader  # noqa: E402

from tests.walls.furnished import Furnished, furnish  # noqa: E402
from trimops.tenancy.unscoped import unscoped  # noqa: E402

FOLDER = Path(__file__).resolve().parents[2] / "fixtures" / "upgrade"
# `migrate` makes these by itself.
MADE_ANEW = {"contenttypes.contenttype", "auth.permission"}
MOST_BYTES = 300_000


def main() -> None:
    call_command("migrate", verbosity=0)
    mine = furnish("Ash & Rye Foot Trimming")
    FOLDER.mkdir(exist_ok=True)
    leaves = sorted(MigrationLoader(connection).graph.leaf_nodes())
    told = {"migrations": dict(leaves), "keys": keys_of(mine), "allowed": {}, "moved": {}}
    (FOLDER / "from.json").write_text(json.dumps(told, indent=1, default=str, sort_keys=True) + "\n")
    with unscoped("every row is kept for the test of the upgrade"):
        tables = {model._meta.label_lower: model for model in apps.get_models(include_auto_created=True)}
        kept = {name: rows_of(model) for name, model in tables.items() if name not in MADE_ANEW}
    kept = {name: rows for name, rows in kept.items() if rows}
    packed = gzip.compress(json.dumps(kept, separators=(",", ":")).encode(), 9, mtime=0)
    if len(packed) > MOST_BYTES:
        raise SystemExit(f"rows.json.gz would have {len(packed)} bytes, more than {MOST_BYTES}")
    (FOLDER / "rows.json.gz").write_bytes(packed)
    count = sum(len(rows) for rows in kept.values())
    print(f"{count} rows of {len(kept)} tables in {len(packed)} bytes, from {dict(leaves)}")


def keys_of(mine: Furnished) -> dict[str, object]:
    owner = mine.house.owner
    return {**mine.keys, "_owner": owner.pk}


def rows_of(model: type[models.Model]) -> list[dict[str, object]]:
    fields = [field for field in model._meta.local_concrete_fields if not field.generated]
    return [{each.attname: told(each, row) for each in fields} for row in model._base_manager.order_by("pk")]


def told(field: models.Field, row: models.Model) -> object:
    """As text that the field reads back; a JSON value as it is."""
    value = getattr(row, field.attname)
    if value is None or isinstance(field, models.JSONField):
        return value
    if isinstance(field, models.BinaryField):
        return base64.b64encode(bytes(value)).decode()
    return field.value_to_string(row)


if __name__ == "__main__":
    main()
