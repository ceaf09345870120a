"""Faults told to a server on the loopback: that they arrive, and what they do not hold."""

import gzip
import json
import os
import subprocess
import sys
import threading
from http.server import BaseHTTPRequestHandler, HTTPServer

import pytest

from tests.architecture.source_tree import ROOT
from trimops.kernel.secret_link import new_secret

WORDS = ("open-sesame-81", "session-of-somebody", "Low Croft", "farmer@low-croft.example")


class Sink(BaseHTTPRequestHandler):
    """Takes whatever is told to it."""

    def do_POST(self):
        body = self.rfile.read(int(self.headers["Content-Length"]))
        packed = self.headers.get("Content-Encoding") == "gzip"
        self.server.told.append((self.path, gzip.decompress(body) if packed else body))
        self.send_response(200)
        self.end_headers()
        self.wfile.write(b"{}")

    def log_message(self, *args):
        pass


@pytest.fixture(scope="module")
def sink():
    server = HTTPServer(("127.0.0.1", 0), Sink)
    server.told = []
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    yield server
    server.shutdown()
    thread.join()
    server.server_close()


def run(command, tmp_path, **more):
    env = {name: value for name, value in os.environ.items() if name not in ("DATABASE_URL", "REDIS_URL")}
    env |= {"TRIMOPS_DATA_DIR": str(tmp_path), **more}
    return subprocess.run(command, cwd=ROOT, env=env, capture_output=True, text=True, timeout=60)


@pytest.fixture(scope="module")
def secret():
    return new_secret()


@pytest.fixture(scope="module")
def told(sink, secret, tmp_path_factory):
    """(address, events): what arrived of a page and a job that broke."""
    command = [sys.executable, "-m", "tests.running.make_faults", secret, *WORDS]
    dsn = f"http://public-key@127.0.0.1:{sink.server_port}/4"
    done = run(command, tmp_path_factory.mktemp("faults"), TRIMOPS_ERRORS_DSN=dsn)
    assert done.returncode == 0, done.stderr
    return sink.told


def events(told):
    """The events of the envelopes: a line of heads, then a line that heads each item, then the item."""
    for _, body in told:
        lines = body.split(b"\n")
        yield from (json.loads(item) for head, item in zip(lines[1::2], lines[2::2], strict=False)
                    if json.loads(head)["type"] == "event")  # fmt: skip


def test_a_page_and_a_job_that_broke_are_told_once_each(told):
    assert {address for address, _ in told} == {"/api/4/envelope/"}
    found = {event["exception"]["values"][-1]["type"]: event for event in events(told)}
    assert set(found) == {"IntegrityError", "RuntimeError"}
    assert len(list(events(told))) == 2
    page = found["IntegrityError"]
    assert page["transaction"] == "/bill/{secret}/"
    assert page["request"] == {"method": "POST"}
    assert len(page["tags"]["request_id"]) == 32
    assert found["RuntimeError"]["tags"] == {"job": "visits.plan_week", "job_id": "7"}
    assert any(
        frame["function"] == "broken" for frame in page["exception"]["values"][-1]["stacktrace"]["frames"]
    )


def test_nothing_that_opens_or_names_is_told(told, secret):
    for _, body in told:
        for word in (secret, *WORDS):
            assert word.encode() not in body, word


def test_nothing_is_told_where_nobody_is_named(tmp_path, secret, sink):
    before = len(sink.told)
    command = [sys.executable, "-m", "tests.running.make_faults", secret, *WORDS]
    assert run(command, tmp_path, TRIMOPS_ERRORS_DSN="").returncode == 0
    assert len(sink.told) == before


WITHOUT = """
import sys
sys.modules["sentry_sdk"] = None
import django
django.setup()
"""


def test_without_the_package_it_says_at_the_start_what_to_do(tmp_path):
    more = {
        "TRIMOPS_ERRORS_DSN": "http://key@127.0.0.1:9/1",
        "DJANGO_SETTINGS_MODULE": "trimops.settings.test",
    }
    done = run([sys.executable, "-c", WITHOUT], tmp_path, **more)
    assert done.returncode != 0
    assert "Install the extra `errors`" in done.stderr.splitlines()[-1]


def test_an_address_that_is_none_is_said_at_the_start(tmp_path):
    more = {"TRIMOPS_ERRORS_DSN": "nonsense", "DJANGO_SETTINGS_MODULE": "trimops.settings.test"}
    done = run([sys.executable, "-c", "import django; django.setup()"], tmp_path, **more)
    assert done.returncode != 0
    assert "no address of the kind https://key@host/number" in done.stderr.splitlines()[-1]
