"""`python -m tests.standards.asvs.write_rules` lists what several fields must mean together (ASVS 2.1.2).

Gathered from the code: every refusal of the work with its code, and what tables hold about several of their columns.
"""

import os
from collections.abc import Iterator
from importlib import import_module
from pkgutil import walk_packages

from tests.standards.asvs.answers import FOLDER

LIST = FOLDER / "rules.md"
PACKAGES = ("trimops", "farms", "visits", "invoicing")
# because: what is no part of the running program is there in one test process and not in the other
NOT_RUNNING = {"migrations", "settings", "management", "demo", "client", "wsgi"}
HEAD = """# What several fields must mean together

Written by `python -m tests.standards.asvs.write_rules` from the code; a test holds it to it. Pages say a refusal beside
the field or as a page of its own, the API as a problem (RFC 9457) with the code.
"""


def rules() -> list[tuple[str, str, str]]:
    """(code, what is refused, where it stands) of each refusal, by code."""
    from trimops.kernel.errors import RuleBroken  # noqa: PLC0415  # because: Django has to be set up first

    for name in PACKAGES:
        for found in walk_packages(import_module(name).__path__, f"{name}."):
            if not NOT_RUNNING & set(found.name.split(".")):
                import_module(found.name)
    return sorted(
        (kind.code, str(kind.__doc__).strip().partition("\n")[0], kind.__module__)
        for kind in _below(RuleBroken)
    )


def _below(kind: type) -> Iterator[type]:
    for each in kind.__subclasses__():
        parts = each.__module__.split(".")
        if parts[0] in PACKAGES and not NOT_RUNNING & set(parts):
            yield each
        yield from _below(each)


def constraints() -> list[tuple[str, str]]:
    """(table, what it holds) of each constraint of ours."""
    from django.apps import apps  # noqa: PLC0415  # because: Django has to be set up first

    return sorted(
        (model._meta.label, constraint.name.replace("_", " "))
        for model in apps.get_models()
        if model.__module__.partition(".")[0] in PACKAGES
        for constraint in model._meta.constraints
    )


def written() -> str:
    lines = [HEAD, "## Rules of the work", "", "| code | what is refused | where |", "|---|---|---|"]
    lines += [f"| `{code}` | {says} | `{where}` |" for code, says, where in rules()]
    lines += ["", "## Held by the tables themselves", "", "| table | what |", "|---|---|"]
    lines += [f"| `{table}` | {says} |" for table, says in constraints()]
    return "\n".join(lines) + "\n"


if __name__ == "__main__":
    import django

    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "trimops.settings.test")
    django.setup()
    LIST.write_text(written(), encoding="utf-8")
