"""What the program is made of: its parts with their licences, and known faults in them. All told from uv.lock.

    python .make/supply.py sbom FILE    CycloneDX 1.5, made by uv
    python .make/supply.py licences     name, version and licence of each part that runs
    python .make/supply.py audit        known faults (pip-audit asks PyPI); exit 1 where there are some

The audit never passes in silence: a part that PyPI could not be asked about is NOT CHECKED, and it says so. That alone
is no fault of the change at hand, so it exits 0; `--strict` makes it 1, for a place that has the network.
"""

import json
import subprocess
import sys
import tempfile
from importlib.metadata import Distribution, PackageNotFoundError, distribution
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
EXPORT = [
    str(ROOT / ".make/uv/bin/uv"),
    "export",
    "--frozen",
    "--quiet",
    "--no-dev",
    "--no-emit-project",
    "--all-extras",
]


def sbom(target: Path) -> dict[str, object]:
    """Write the list of parts and give it back."""
    target.parent.mkdir(parents=True, exist_ok=True)
    command = [*EXPORT, "--format", "cyclonedx1.5", "--output-file", str(target)]
    subprocess.run(command, cwd=ROOT, check=True, stdout=subprocess.DEVNULL)
    found: dict[str, object] = json.loads(target.read_text(encoding="utf-8"))
    return found


def parts() -> list[tuple[str, str]]:
    """(name, version) of each part that runs, by the lock."""
    with tempfile.TemporaryDirectory() as folder:
        components = sbom(Path(folder) / "sbom.json")["components"]
    assert isinstance(components, list)
    return sorted((part["name"], part["version"]) for part in components)


def licence_of(part: Distribution) -> str:
    """As the part itself says it: the SPDX expression, the classifiers, or the first line of its own words."""
    told = part.metadata
    if said := told.get("License-Expression"):
        return str(said)
    named = [
        line.rpartition(" :: ")[2] for line in told.get_all("Classifier", []) if line.startswith("License ::")
    ]
    words = str(told.get("License") or "").strip().splitlines()
    return ", ".join(named) or (words[0][:60] if words else "UNKNOWN")


def licences() -> list[tuple[str, str, str]]:
    """Each part that runs here; one that the lock keeps for other machines is told as such."""
    rows = []
    for name, version in parts():
        try:
            rows.append((name, version, licence_of(distribution(name))))
        except PackageNotFoundError:
            rows.append((name, version, "not installed on this machine"))
    return rows


def audit() -> dict[str, object]:
    """pip-audit's own answer; an empty one where it could not be had at all."""
    with tempfile.TemporaryDirectory() as folder:
        wanted, answer = Path(folder) / "wanted.txt", Path(folder) / "answer.json"
        command = [*EXPORT, "--format", "requirements-txt", "--output-file", str(wanted)]
        subprocess.run(command, cwd=ROOT, check=True, stdout=subprocess.DEVNULL)
        asked = [
            sys.executable,
            "-m",
            "pip_audit",
            "--requirement",
            str(wanted),
            "--disable-pip",
            "--require-hashes",
        ]
        asked += ["--progress-spinner", "off", "--format", "json", "--output", str(answer)]
        done = subprocess.run(asked, cwd=ROOT, capture_output=True, text=True)
        if not answer.exists():
            print(done.stderr.strip()[-400:])
            return {"dependencies": []}
        found: dict[str, object] = json.loads(answer.read_text(encoding="utf-8"))
        return found


def judged(answer: dict[str, object], wanted: int) -> tuple[list[str], int]:
    """The known faults as lines, and how many of the `wanted` parts were not checked."""
    rows = answer.get("dependencies")
    rows = rows if isinstance(rows, list) else []
    checked = [row for row in rows if "skip_reason" not in row]
    faults = [
        f"{row['name']} {row['version']}: {fault['id']}, mended in {', '.join(fault['fix_versions']) or 'none yet'}"
        for row in checked
        for fault in row["vulns"]
    ]
    return faults, wanted - len(checked)


def main(asked: list[str]) -> int:
    """The exit code."""
    if asked[:1] == ["sbom"]:
        found = sbom(Path(asked[1]))["components"]
        print(f"{len(found) if isinstance(found, list) else 0} parts in {asked[1]}")
        return 0
    if asked[:1] == ["licences"]:
        for name, version, licence in licences():
            print(f"{name:32} {version:14} {licence}")
        return 0
    wanted = len(parts())
    faults, unchecked = judged(audit(), wanted)
    for fault in faults:
        print(f"KNOWN FAULT  {fault}")
    if unchecked:
        print(f"NOT CHECKED  {unchecked} of {wanted} parts: PyPI could not be asked about them from here.")
    print(f"{len(faults)} known faults in {wanted - unchecked} parts that were checked.")
    return 1 if faults or (unchecked and "--strict" in asked) else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
