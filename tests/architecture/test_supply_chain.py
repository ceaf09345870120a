"""What the program is made of comes from one place, each file with its hash; and no audit passes in silence."""

import importlib.util
import re
import tomllib

import pytest

from tests.architecture.source_tree import ROOT

LOCK = tomllib.loads((ROOT / "uv.lock").read_text(encoding="utf-8"))
SHA256 = re.compile(r"sha256:[0-9a-f]{64}")
NOT_OURS_TO_GIVE = re.compile(r"\b(?:AGPL|SSPL|BUSL|Commons Clause|Affero)\b", re.IGNORECASE)


@pytest.fixture(scope="module")
def supply():
    spec = importlib.util.spec_from_file_location("supply", ROOT / ".make" / "supply.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_every_package_comes_from_the_one_registry_and_we_ourselves_from_here():
    sources = {package["name"]: package["source"] for package in LOCK["package"]}
    elsewhere = {name: source for name, source in sources.items() if "registry" not in source}
    assert set(elsewhere) == {"trimops"}
    assert {source["registry"] for source in sources.values() if "registry" in source} == {
        "https://pypi.org/simple"
    }


def test_every_file_of_the_lock_has_its_hash():
    files = [
        file
        for package in LOCK["package"]
        for file in [*package.get("wheels", []), *([package["sdist"]] if "sdist" in package else [])]
    ]
    assert len(files) > 500
    assert [file["url"] for file in files if not SHA256.fullmatch(file.get("hash", ""))] == []


def test_the_list_of_parts_is_that_of_the_lock(supply, tmp_path):
    told = supply.sbom(tmp_path / "sbom.json")
    locked = {(package["name"], package.get("version")) for package in LOCK["package"]}
    listed = {(part["name"], part["version"]) for part in told["components"]}
    assert (told["bomFormat"], told["specVersion"]) == ("CycloneDX", "1.5")
    assert listed <= locked
    assert {"django", "djangorestframework", "reportlab", "cryptography", "lxml"} <= {
        name for name, _ in listed
    }
    assert not {"pytest", "mypy", "schemathesis"} & {name for name, _ in listed}, (
        "what only tests need runs nowhere"
    )


def test_every_part_says_its_licence_and_none_forbids_what_we_do(supply):
    rows = supply.licences()
    assert [name for name, _, licence in rows if licence == "UNKNOWN"] == []
    assert [row for row in rows if NOT_OURS_TO_GIVE.search(row[2])] == []


CHECKED = {"name": "a", "version": "1", "vulns": []}
FAULTY = {"name": "b", "version": "2", "vulns": [{"id": "PYSEC-1", "fix_versions": ["2.1"]}]}
SKIPPED = {"name": "c", "skip_reason": "Dependency not found on PyPI"}


@pytest.mark.parametrize(
    ("rows", "faults", "unchecked"),
    [
        ([CHECKED, FAULTY, SKIPPED], 1, 1),
        ([SKIPPED, SKIPPED, SKIPPED], 0, 3),
        ([CHECKED], 0, 2),
        ([], 0, 3),
        ([CHECKED, CHECKED, CHECKED], 0, 0),
    ],
)
def test_what_was_not_checked_is_never_told_as_well(supply, rows, faults, unchecked):
    found, missing = supply.judged({"dependencies": rows}, 3)
    assert (len(found), missing) == (faults, unchecked)


def test_the_audit_says_so_and_fails_only_for_faults(supply, monkeypatch, capsys):
    monkeypatch.setattr(supply, "parts", lambda: [("a", "1"), ("b", "2"), ("c", "3")])
    monkeypatch.setattr(supply, "audit", lambda: {"dependencies": [CHECKED, SKIPPED]})
    assert supply.main(["audit"]) == 0
    assert "NOT CHECKED  2 of 3" in capsys.readouterr().out
    assert supply.main(["audit", "--strict"]) == 1
    monkeypatch.setattr(supply, "audit", lambda: {"dependencies": [FAULTY, CHECKED]})
    assert supply.main(["audit"]) == 1
    assert "PYSEC-1, mended in 2.1" in capsys.readouterr().out
