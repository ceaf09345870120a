"""Takes the database of the last release (fixtures/upgrade) to the newest tables; prints what became of its rows.

Run in a process of its own, on the database that DATABASE_URL or TRIMOPS_DATA_DIR names, which must be empty.
"""

import base64
import gzip
import hashlib
import io
import json
import os
from contextlib import redirect_stdout

import django

os.environ["DJANGO_SETTINGS_MODULE"] = "trimops.settings.test"
django.setup()

from django.core.management import call_command  # noqa: E402
from django.core.management.color import no_style  # noqa: E402
from django.db import connection, models, transaction  # noqa: E402
from django.db.migrations.executor import MigrationExecutor  # noqa: E402
from django.test import Client  # noqa: E402
from django.urls import reverse  # noqa: E402
from django.utils import timezone  # noqa: E402

from invoicing.models.issued_locks import lock_issued, unlock_issued  # noqa: E402
from tests.architecture.source_tree import ROOT  # noqa: E402
from tests.upgrade.compare import Table, lost, rows_in  # noqa: E402
from tests.walls.routes import PAGES  # noqa: E402
from trimops.accounts.models import User  # noqa: E402
from trimops.accounts.roles import Role  # noqa: E402
from trimops.web.ready import what_is_not_ready  # noqa: E402

FOLDER = ROOT / "fixtures" / "upgrade"
TOLD = json.loads((FOLDER / "from.json").read_text())
# Whether the old tables are made by the old migrations too, one after the other.
IS_WALKED_WHOLLY = os.environ.get("TRIMOPS_LONG", "0") == "1"
# `migrate` keeps these itself.
MADE_ANEW = {"django_migrations", "django_content_type", "auth_permission"}


def main() -> None:
    fill(old_tables())
    before = {table: columns_of(table) for table in tables()}
    call_command("migrate", verbosity=0)
    after = {table: columns_of(table) for table in tables()}
    told = {
        "rows": sum(len(rows_in(table)) for table in before.values()),
        "lost": list(lost(before, after, TOLD["moved"])),
        "papers": papers(),
        "ready": what_is_not_ready(timezone.now())["migrations"],
        "answers": answers(),
    }
    print(json.dumps(told))


def old_tables():
    """The database as that release had it; its tables as models of that day."""
    executor = MigrationExecutor(connection)
    targets = list(TOLD["migrations"].items())
    if IS_WALKED_WHOLLY:
        executor.migrate(targets)
    else:
        _made_at_once(executor, targets)
    return MigrationExecutor(connection).loader.project_state(targets).apps


def _made_at_once(executor: MigrationExecutor, targets) -> None:
    """The same tables straight from that day's models: the way there takes most of a minute on SQLite."""
    executor.recorder.ensure_schema()
    with connection.schema_editor() as editor:
        for model in executor.loader.project_state(targets).apps.get_models():
            editor.create_model(model)
    for migration, _ in executor.migration_plan(targets):
        executor.recorder.record_applied(migration.app_label, migration.name)


def fill(apps) -> None:
    kept = json.loads(gzip.decompress((FOLDER / "rows.json.gz").read_bytes()))
    known = {model._meta.label_lower: model for model in apps.get_models(include_auto_created=True)}
    with connection.constraint_checks_disabled(), transaction.atomic():
        with connection.schema_editor(atomic=False) as editor:
            unlock_issued(apps, editor)
        for name, rows in kept.items():
            for row in rows:
                known[name](**read(known[name], row)).save_base(raw=True, force_insert=True)
        with connection.schema_editor(atomic=False) as editor:
            lock_issued(apps, editor)
    connection.check_constraints()
    with connection.cursor() as cursor:
        for statement in connection.ops.sequence_reset_sql(no_style(), list(known.values())):
            cursor.execute(statement)


def read(model: type[models.Model], row: dict[str, object]) -> dict[str, object]:
    fields = {field.attname: field for field in model._meta.local_concrete_fields}
    return {name: value_of(fields[name], value) for name, value in row.items()}


def value_of(field: models.Field, value: object) -> object:
    if value is None or isinstance(field, models.JSONField):
        return value
    if isinstance(field, models.BinaryField):
        return base64.b64decode(value)
    return (field.target_field if isinstance(field, models.ForeignKey) else field).to_python(value)


def tables() -> list[str]:
    return sorted(set(connection.introspection.table_names()) - MADE_ANEW)


def columns_of(table: str) -> Table:
    """{column: {key of the row: hash of its value}}."""
    with connection.cursor() as cursor:
        key = connection.introspection.get_primary_key_column(cursor, table)
        cursor.execute(f'SELECT * FROM "{table}"')
        names = [column[0] for column in cursor.description]
        rows = cursor.fetchall()
    place = names.index(key)
    return {name: {str(row[place]): hash_of(row[at]) for row in rows} for at, name in enumerate(names)}


def hash_of(value: object) -> str:
    """ "" for what says nothing."""
    if value is None or value == "":
        return ""
    plain = bytes(value) if isinstance(value, bytes | memoryview) else repr(value).encode()
    return hashlib.sha256(plain).hexdigest()[:16]


def papers() -> str:
    said = io.StringIO()
    with redirect_stdout(said):
        call_command("check_papers", stdout=said)
    return said.getvalue().strip()


def answers() -> dict[str, int]:
    """How each page answers the owner whose rows those are; pages that name rows of later releases are left out."""
    keys = {name: key for name, key in TOLD["keys"].items() if not name.startswith("_")}
    client = Client(raise_request_exception=False)
    client.force_login(User.objects.get(pk=TOLD["keys"]["_owner"]))
    opened = {
        name: route.parts(keys)
        for name, route in PAGES.items()
        if Role.OWNER in route.roles and set(route.rows.values()) <= set(keys)
    }
    return {name: client.get(reverse(name, kwargs=parts)).status_code for name, parts in opened.items()}


if __name__ == "__main__":
    main()
