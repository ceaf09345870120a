"""A calendar reader that is not Python: ical.js (npm, MPL 2.0), run by node."""

import hashlib
import json
import os
import shutil
import subprocess
import tarfile
import tempfile
from datetime import datetime
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
NAME, VERSION = "ical.js", "2.2.1"
SHA256 = "36482280d62cc50f0adddb0587612cff32b96df18eb9e2071ec9929c2e7b3107"
HOME = ROOT / ".services" / f"{NAME}-{VERSION}"
READ = """
const ICAL = require(process.argv[1]);
const calendar = new ICAL.Component(ICAL.parse(require("fs").readFileSync(0, "utf8")));
const utc = (time) => time.convertToZone(ICAL.Timezone.utcTimezone).toString();
console.log(JSON.stringify(calendar.getAllSubcomponents("vevent").map((part) => {
  const event = new ICAL.Event(part);
  return event.startDate.isDate
    ? [event.uid, event.startDate.toString(), event.endDate.toString()]
    : [event.uid, utc(event.startDate), utc(event.endDate)];
})));
"""


def has_node() -> bool:
    return shutil.which("node") is not None and shutil.which("npm") is not None


def read_by_ical_js(raw: bytes) -> list[tuple[str, datetime, datetime]]:
    """uid, start and end of each event in UTC; whole days as their midnights without a zone."""
    command = ["node", "-e", READ, str(_library())]
    done = subprocess.run(command, input=raw, capture_output=True, check=True)
    return [
        (uid, datetime.fromisoformat(start), datetime.fromisoformat(end))
        for uid, start, end in json.loads(done.stdout)
    ]


def _library() -> Path:
    if not HOME.exists():
        _fetch()
    return HOME / "package" / "dist" / "ical.es5.cjs"


def _fetch() -> None:
    """By npm, held against the hash; in place at once, so that two test processes do not meet half of it."""
    HOME.parent.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory(dir=HOME.parent) as folder:
        subprocess.run(
            ["npm", "pack", "--silent", f"{NAME}@{VERSION}"], cwd=folder, check=True, env=os.environ
        )
        packed = Path(folder) / f"{NAME}-{VERSION}.tgz"
        if hashlib.sha256(packed.read_bytes()).hexdigest() != SHA256:
            raise RuntimeError(f"{NAME} {VERSION} is not the one that was looked at")
        with tarfile.open(packed) as archive:
            archive.extractall(Path(folder) / "out", filter="data")
        try:
            (Path(folder) / "out").rename(HOME)
        except OSError:
            # because: another test process was quicker, and what it has put there is the same
            if not HOME.exists():
                raise
