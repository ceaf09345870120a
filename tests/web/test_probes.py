"""What machines ask: alive, ready, figures. Answered without a name, without HTTPS, without a session."""

from datetime import UTC, datetime, timedelta

import pytest
from django.db import DatabaseError, connection
from django.test import Client
from django.utils import timezone
from prometheus_client.parser import text_string_to_metric_families

from trimops.watch.timetable import note_beat
from trimops.web import ready
from trimops.web.ready import what_is_not_ready

LIVE, READY, METRICS = "/health/live/", "/health/ready/", "/metrics"
TOKEN = "a-token-of-the-monitoring"
INSIDE = {"REMOTE_ADDR": "10.1.2.3", "HTTP_HOST": "10.1.2.7:8000"}


@pytest.fixture(autouse=True)
def _as_deployed(settings, tmp_path):
    settings.DATA_DIR = tmp_path
    settings.ALLOWED_HOSTS = ["trimops.example"]
    settings.SECURE_SSL_REDIRECT = True


class _Refusing:
    """Stands where the database's answers pass through, as Django's own door for that (execute_wrapper)."""

    def __call__(self, execute, sql, params, many, context):
        raise DatabaseError("connection to 10.9.9.9, user trimops, refused")


def test_a_process_is_alive_whatever_the_database_does():
    with connection.execute_wrapper(_Refusing()):
        answer = Client(**INSIDE).get(LIVE)
    assert (answer.status_code, answer.json()) == (200, {"status": "ok"})
    assert answer["Cache-Control"] == "no-store"
    assert answer["Content-Length"] == str(len(answer.content))
    assert not answer.cookies


@pytest.mark.parametrize("path", [LIVE, READY])
@pytest.mark.django_db
def test_they_say_to_browsers_what_all_other_answers_say(path, settings):
    settings.IS_HTTPS, settings.SECURE_HSTS_SECONDS = True, 31_536_000
    answer = Client(**INSIDE).get(path)
    assert answer["X-Content-Type-Options"] == "nosniff"
    assert answer["Strict-Transport-Security"] == "max-age=31536000; includeSubDomains"
    assert "frame-ancestors 'none'" in answer["Content-Security-Policy"]


def test_other_addresses_are_still_refused_to_a_name_that_is_not_ours():
    assert Client(**INSIDE).get("/account/login/", secure=True).status_code == 400


@pytest.mark.django_db
def test_ready_names_each_part(django_assert_max_num_queries):
    note_beat(timezone.now())  # because: this process may be older than the timetable's grace
    with django_assert_max_num_queries(3):
        answer = Client(**INSIDE).get("/health/ready")
    parts = {
        "database": "ok",
        "migrations": "ok",
        "broker": "ok",
        "disk": "ok",
        "timetable": "ok",
        "files": "ok",
    }
    assert (answer.status_code, answer.json()) == (200, {"status": "ok", "parts": parts})


@pytest.mark.django_db
def test_a_database_that_does_not_answer_is_named_and_nothing_of_it_told():
    with connection.execute_wrapper(_Refusing()):
        answer = Client(**INSIDE).get(READY)
    assert answer.status_code == 503
    assert answer.json()["parts"]["database"] == "does not answer"
    assert "10.9.9.9" not in answer.content.decode()


@pytest.mark.django_db
def test_once_all_migrations_are_applied_nobody_is_asked_again(django_assert_num_queries):
    """That some are not applied is seen on a real server in tests/running/test_server.py."""
    part = ready._Migrations()
    assert part(datetime.now(UTC)) == ""
    with django_assert_num_queries(0):
        assert part(datetime.now(UTC)) == ""


@pytest.mark.django_db
def test_a_broker_that_is_away_is_named(settings):
    settings.REDIS_URL = "redis://127.0.0.1:1/0"
    assert what_is_not_ready(datetime.now(UTC))["broker"] == "does not answer"


@pytest.mark.django_db
def test_too_little_room_beside_the_data_is_named(settings):
    settings.DISK_FREE_MB = 10**9
    assert what_is_not_ready(datetime.now(UTC))["disk"] == "less than 1000000000 MB free"


@pytest.mark.django_db
def test_a_folder_that_is_gone_is_named(settings, tmp_path):
    settings.DATA_DIR = tmp_path / "gone"
    assert what_is_not_ready(datetime.now(UTC))["disk"] == "fails"


def test_a_timetable_that_stopped_is_named(settings, tmp_path):
    settings.REDIS_URL = ""
    now = datetime(2026, 3, 2, 12, tzinfo=UTC)
    part = ready._Timetable(began=now - timedelta(hours=1))
    for age, said in ((4, ""), (6, "no sign of life for more than 5 minutes")):
        (tmp_path / "timetable-beat").write_text(str((now - timedelta(minutes=age)).timestamp()))
        assert part(now) == said


def test_one_that_never_began_is_named_once_this_process_has_been_there_for_so_long(settings):
    settings.REDIS_URL = ""
    began = datetime(2026, 3, 2, 12, tzinfo=UTC)
    part = ready._Timetable(began)
    assert part(began + timedelta(minutes=5)) == ""
    assert part(began + timedelta(minutes=6)) == "no sign of life for more than 5 minutes"


@pytest.mark.parametrize("at", [LIVE, READY])
def test_they_are_only_looked_at(at):
    assert Client(**INSIDE).post(at).status_code == 405
    assert Client(**INSIDE).head(at).content == b""


@pytest.mark.django_db
@pytest.mark.parametrize("given", [None, "Bearer wrong", f"Bearer {TOKEN}x", "Bearer ", "Bearer tökn"])
def test_figures_are_not_there_without_the_token(settings, given):
    settings.ALLOWED_HOSTS, settings.SECURE_SSL_REDIRECT = ["*"], False
    for token in ("", TOKEN):
        settings.METRICS_TOKEN = token
        headers = {"Authorization": given} if given is not None else {}
        assert Client().get(METRICS, headers=headers).status_code == 404


@pytest.mark.django_db
def test_figures_are_read_by_whoever_bears_the_token(settings):
    settings.METRICS_TOKEN = TOKEN
    Client(headers={"host": "trimops.example"}).get("/account/login/", secure=True)
    answer = Client(**INSIDE).get(METRICS, headers={"Authorization": f"Bearer {TOKEN}"})
    assert answer.status_code == 200
    assert answer["Content-Type"].startswith("text/plain")
    families = {each.name: each for each in text_string_to_metric_families(answer.content.decode())}
    routes = {sample.labels["route"] for sample in families["trimops_requests"].samples}
    assert "account_login" in routes
    assert not any("/" in route for route in routes)
    assert families["trimops_database_up"].samples[0].value == 1
    assert {"trimops_request_seconds", "trimops_errands_waiting", "trimops_messages_failed"} <= set(families)


def test_figures_say_that_the_database_is_away(settings, db):
    settings.METRICS_TOKEN = TOKEN
    with connection.execute_wrapper(_Refusing()):
        answer = Client(**INSIDE).get(METRICS, headers={"Authorization": f"Bearer {TOKEN}"})
    assert answer.status_code == 200
    assert b"trimops_database_up 0.0" in answer.content
    assert b"trimops_errands" not in answer.content
