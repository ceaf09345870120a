"""The files for a container engine, read as it would read them, since none runs here."""

import os
import re
import shutil
import subprocess
import sys

import pytest
import yaml

from tests.architecture.source_tree import ROOT
from tests.architecture.test_settings_table import names_read

MAKE = ROOT / ".make"
COMPOSE = yaml.safe_load((MAKE / "compose.yaml").read_text())
SERVICES = COMPOSE["services"]
OURS = {name: each for name, each in SERVICES.items() if "build" in each}
ASKED = re.compile(r"\$\{([A-Z_]+)(?::([-?])([^}]*))?\}")
# Of the server and of compose itself, not of the program.
OF_THE_SERVER = {
    "TRIMOPS_BIND",
    "PORT",
    "WEB_WORKERS",
    "WEB_THREADS",
    "TASK_WORKERS",
    "POSTGRES_PASSWORD",
    "TRIMOPS_VERSION",
}
SECRET = re.compile(r"PASSWORD|SECRET|TOKEN|DSN")


def test_every_part_of_the_site_is_there():
    assert set(SERVICES) == {"migrate", "web", "worker", "urgent", "beat", "postgres", "valkey"}
    assert set(OURS) == {"migrate", "web", "worker", "urgent", "beat"}


def test_nobody_runs_as_root_and_nothing_can_be_written_but_volumes():
    lines = (MAKE / "Dockerfile").read_text().splitlines()
    assert "USER trimops" in lines
    assert max(at for at, line in enumerate(lines) if line.startswith("USER")) < lines.index("EXPOSE 8000")
    for each in OURS.values():
        assert each["read_only"] is True
        assert each["cap_drop"] == ["ALL"]


@pytest.mark.parametrize("name", ["web", "worker", "urgent", "postgres", "valkey"])
def test_what_stands_is_looked_after(name):
    check = SERVICES[name]["healthcheck"]
    assert {"test", "interval", "timeout", "retries"} <= set(check)


def test_all_that_is_kept_lies_in_a_named_volume():
    mounted = {each.partition(":")[0] for service in SERVICES.values() for each in service["volumes"]}
    assert mounted == set(COMPOSE["volumes"])
    assert {"data", "postgres", "valkey"} <= mounted


def test_no_secret_stands_in_the_files():
    text = (MAKE / "compose.yaml").read_text()
    for name, kind, default in ASKED.findall(text):
        if SECRET.search(name):
            assert kind == "?" or default == "", name
    for service in SERVICES.values():
        for name, value in service.get("environment", {}).items():
            assert not SECRET.search(name) or str(value).startswith("${"), name
    example = (MAKE / "site.env.example").read_text()
    given = dict(line.split("=", 1) for line in example.splitlines() if "=" in line and line[0] != "#")
    assert all(value == "" for name, value in given.items() if SECRET.search(name))
    must = {name for name, kind, _ in ASKED.findall(text) if kind == "?"}
    assert must <= set(given)


def test_every_name_that_is_set_is_one_that_is_read():
    text = (MAKE / "compose.yaml").read_text()
    names = {name for each in OURS.values() for name in each["environment"]}
    names |= {name for name, _, _ in ASKED.findall(text)}
    assert names - OF_THE_SERVER <= names_read()


def test_commands_are_those_of_the_procfile():
    lines = (MAKE / "Procfile").read_text().splitlines()
    told = dict(line.split(": ", 1) for line in lines)
    for name in ("web", "worker", "urgent", "beat"):
        words = [each for each in SERVICES[name]["command"] if "$" not in each]
        program = words[: words.index("trimops") + 2] if "trimops" in words else words
        assert " ".join(program) in told[name]


@pytest.fixture(scope="module")
def image(tmp_path_factory):
    """What `COPY . .` would bring: the paths that .dockerignore lets through."""
    folder = tmp_path_factory.mktemp("image")
    rules = (MAKE / "Dockerfile.dockerignore").read_text().splitlines()
    for path in (ROOT / rule[1:] for rule in rules if rule.startswith("!")):
        to = folder / path.relative_to(ROOT)
        to.parent.mkdir(exist_ok=True, parents=True)
        if path.is_dir():
            shutil.copytree(path, to, ignore=shutil.ignore_patterns("__pycache__", "*.sqlite3*"))
        else:
            shutil.copy(path, to)
    return folder


def test_what_the_image_holds_is_enough_to_stand(image):
    env = {name: value for name, value in os.environ.items() if not name.startswith(("TRIMOPS", "DJANGO"))}
    env |= {"TRIMOPS_DATA_DIR": str(image / "data"), "TRIMOPS_COLLECTED": "1", "PYTHONPATH": str(image)}
    for words in (["collectstatic", "--noinput", "--verbosity", "0"], ["check"]):
        subprocess.run([sys.executable, "manage.py", *words], cwd=image, env=env, check=True)
    assert list((image / "static-collected").glob("r-*/trimops/trimops.css.gz"))
