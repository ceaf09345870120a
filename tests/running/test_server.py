"""The web server as it is run for others: gunicorn by .make/gunicorn.conf.py, two workers, files of a release."""

import json
import os
import re
import socket
import subprocess
import sys
from functools import partial

import httpx
import pytest
from prometheus_client.parser import text_string_to_metric_families

from tests.architecture.source_tree import ROOT
from tests.services.processes import free_port, running
from trimops.kernel.secret_link import new_secret

TOKEN = "a-token-of-the-monitoring"
COMMAND = [sys.executable, "-m", "gunicorn", "--config", ".make/gunicorn.conf.py", "trimops.wsgi"]


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    return tmp_path_factory.mktemp("served")


@pytest.fixture(scope="module")
def site(folder):
    """A client of a server on an empty database: no migration was applied, no file collected but those of the look."""
    port = free_port()
    clean = {name: value for name, value in os.environ.items() if name not in ("DATABASE_URL", "REDIS_URL")}
    env = {
        **clean,
        "DJANGO_SETTINGS_MODULE": "tests.running.settings_served",
        "TRIMOPS_DATA_DIR": str(folder),
        "TRIMOPS_SECRET_KEY": "only-for-tests-" + "x" * 50,
        "TRIMOPS_METRICS_TOKEN": TOKEN,
        "TRIMOPS_LOG_FORMAT": "json",
        "TRIMOPS_COLLECTED": "1",
        "TRIMOPS_HTTPS": "1",
        "TRIMOPS_ALLOWED_HOSTS": "trimops.example",
        "PORT": str(port),
    }
    manage = [sys.executable, "manage.py"]
    subprocess.run([*manage, "collectstatic", "--noinput", "--verbosity", "0"], cwd=ROOT, env=env, check=True)
    ready = partial(answers, f"http://127.0.0.1:{port}/health/live/")
    with (
        running(COMMAND, log=folder / "log", is_ready=ready, env=env, cwd=ROOT),
        httpx.Client(base_url=f"http://127.0.0.1:{port}", timeout=30) as client,
    ):
        yield client


def answers(address):
    try:
        return httpx.get(address, timeout=30).status_code == 200
    except httpx.TransportError:
        return False


def as_visitor(**more):
    return {"Host": "trimops.example", "X-Forwarded-Proto": "https", **more}


def test_a_load_balancer_is_answered_by_number_and_without_https(site):
    assert site.get("/health/live/").json() == {"status": "ok"}
    assert site.get("/account/login/").status_code == 400, "a page is not"


def test_a_database_without_its_tables_is_not_ready(site):
    answer = site.get("/health/ready/")
    assert answer.status_code == 503
    parts = answer.json()["parts"]
    assert re.fullmatch(r"\d+ not applied: run migrate", parts.pop("migrations"))
    assert set(parts.values()) == {"ok"}


def test_a_file_of_the_release_is_packed_and_kept_for_good(site):
    page = site.get("/account/login/", headers=as_visitor()).text
    style = re.search(r'href="(/static/r-[0-9a-f]{12}/trimops/trimops\.css)"', page)[1]
    for asked, packed in (("gzip", "gzip"), ("identity", None)):
        answer = site.get(style, headers=as_visitor(**{"Accept-Encoding": asked}))
        assert answer.headers.get("Content-Encoding") == packed
        assert "immutable" in answer.headers["Cache-Control"]
        assert answer.content == (ROOT / "trimops/web/static/trimops/trimops.css").read_bytes()
    plain = site.get("/static/trimops/trimops.css", headers=as_visitor())
    assert "immutable" not in plain.headers["Cache-Control"]


def test_what_the_phone_keeps_lies_below_the_same_release(site):
    worker = site.get("/visits/crush-worker.js", headers=as_visitor()).text
    files = json.loads(re.search(r"new Set\((\[.*?\])\)", worker)[1])
    assert len({re.match(r"/static/r-[0-9a-f]{12}/", each)[0] for each in files}) == 1
    packet = site.get("/visits/crush.pack", headers=as_visitor(**{"Accept-Encoding": "gzip"}))
    head = packet.content.partition(b"\n")[0]
    assert [address for address, _, _ in json.loads(head)["files"]] == files
    assert site.get(files[0], headers=as_visitor()).status_code == 200


def test_workers_count_together(site):
    for _ in range(40):
        site.get("/account/login/", headers=as_visitor(Connection="close"))
    seen = {counted(site) for _ in range(10)}
    assert len(seen) == 1
    assert seen.pop() >= 40
    assert site.get("/metrics", headers=as_visitor()).status_code == 404


def counted(site):
    answer = site.get("/metrics", headers={"Authorization": f"Bearer {TOKEN}", "Connection": "close"})
    families = {each.name: each for each in text_string_to_metric_families(answer.text)}
    return sum(
        sample.value
        for sample in families["trimops_requests"].samples
        if sample.name.endswith("_total") and sample.labels["route"] == "account_login"
    )


TWO_LENGTHS = (
    "POST /account/login/ HTTP/1.1\r\nHost: trimops.example\r\nX-Forwarded-Proto: https\r\n"
    "Content-Length: 4\r\nTransfer-Encoding: chunked\r\n\r\n"
    "0\r\n\r\nGET /health/live/ HTTP/1.1\r\nHost: trimops.example\r\n\r\n"
)


def test_a_request_that_says_its_length_twice_hides_no_second_one(site):
    """Request smuggling (ASVS 4.2.1): answered once at most, and the line is closed."""
    with socket.create_connection((site.base_url.host, site.base_url.port or 80), timeout=10) as line:
        line.sendall(TWO_LENGTHS.encode())
        said = b"".join(iter(lambda: line.recv(4096), b"")).decode()
    assert said.count("HTTP/1.1 ") <= 1
    assert '"status": "ok"' not in said


def test_the_log_is_a_line_of_json_for_each_request_and_holds_no_secret(site, folder):
    secret = new_secret()
    site.get(f"/feeds/{secret}.ics", headers=as_visitor(**{"X-Request-ID": "from-the-proxy"}))
    site.get(f"/bill/{secret}/", headers=as_visitor())
    said = (folder / "log").read_text()
    lines = [json.loads(line) for line in said.splitlines()]
    ours = [line for line in lines if line.get("request_id") == "from-the-proxy"]
    assert {line["logger"] for line in ours} == {"trimops.access", "django.request"}
    (access,) = (line for line in ours if line["logger"] == "trimops.access")
    assert (access["route"], access["path"]) == ("calendar_feed", "/feeds/....ics")
    assert secret not in said
    assert any(line["logger"] == "gunicorn.error" for line in lines)
