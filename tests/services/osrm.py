"""A real road engine (OSRM) from the wheel that carries it, over a map of our own making, on a free port."""

import os
import platform
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path

import httpx

from tests.services.processes import free_port, running

ROOT = Path(__file__).resolve().parents[2]
WHEEL = Path(__file__).with_name("osrm_wheel.txt")
HOME = ROOT / ".services" / "osrm-26.10.0"
MACHINES = {("Linux", "x86_64"), ("Linux", "aarch64"), ("Darwin", "arm64"), ("Windows", "AMD64")}


def has_wheel() -> bool:
    """Whether the engine is published for this kind of machine."""
    return (platform.system(), platform.machine()) in MACHINES


def engine_home() -> Path:
    """The unpacked wheel: programs in `osrm/bin`, the library for Python 3.12 and newer beside. Fetched once."""
    if not HOME.exists():
        _fetch()
    return HOME


def prepare(network: Path, profile: Path) -> Path:
    """Make the network (OpenStreetMap XML) ready to be asked; the path that the engine wants."""
    extract = network.with_suffix(".osrm")
    _run("osrm-extract", "--profile", str(profile), str(network))
    _run("osrm-contract", str(extract))
    return extract


@contextmanager
def osrm(extract: Path, *, largest_table: int = 100) -> Iterator[str]:
    """Run a server over a prepared extract and yield its address."""
    port = free_port()
    command = [
        *(str(engine_home() / "osrm/bin/osrm-routed"), "--ip", "127.0.0.1", "--port", str(port)),
        *("--threads", "1", "--max-table-size", str(largest_table), str(extract)),
    ]
    address = f"http://127.0.0.1:{port}"
    with running(command, log=extract.with_suffix(".log"), is_ready=partial(_answers, address)):
        yield address


def _answers(address: str) -> bool:
    try:
        return httpx.get(f"{address}/nearest/v1/driving/0,0", timeout=1, trust_env=False).status_code < 500
    except httpx.HTTPError:
        return False


def _run(program: str, *words: str) -> None:
    command = [str(engine_home() / "osrm/bin" / program), "--threads", "1", *words]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode != 0:
        raise RuntimeError(f"{program} failed:\n{(done.stdout + done.stderr)[-3000:]}")


def _fetch() -> None:
    """Through uv, which checks the hashes; in place at once, so that two test processes do not meet half of it."""
    HOME.parent.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory(dir=HOME.parent) as folder:
        target = Path(folder) / "osrm"
        command = [
            _uv(),
            "pip",
            "install",
            "--quiet",
            "--no-deps",
            "--require-hashes",
            "--only-binary",
            ":all:",
        ]
        command += ["--python-version", "3.12", "--target", str(target), "--requirement", str(WHEEL)]
        subprocess.run(command, check=True, cwd=ROOT, env=_env())
        for program in (target / "osrm" / "bin").iterdir():
            program.chmod(0o755)
        try:
            target.rename(HOME)
        except OSError:
            # Another test process was quicker; what it has put there is the same.
            if not HOME.exists():
                raise


def _uv() -> str:
    own = ROOT / ".make" / "uv" / "bin" / "uv"
    found = str(own) if own.exists() else shutil.which("uv")
    if not found:
        raise RuntimeError(
            "the road engine of the tests is fetched by uv, which is missing: run `make setup`"
        )
    return found


def _env() -> dict[str, str]:
    """What `.make/bootstrap.sh` does for uv: trust the certificates that this machine trusts."""
    system = Path("/etc/ssl/certs/ca-certificates.crt")
    return {**({"SSL_CERT_FILE": str(system)} if system.exists() else {}), **os.environ}
