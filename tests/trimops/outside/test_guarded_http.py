"""Questions to servers that misbehave, and to names that change their mind."""

import gzip
import ssl
import time
import tracemalloc
from datetime import UTC, datetime, timedelta
from ipaddress import ip_address

import pytest
from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec

from tests.services.odd_server import (
    FLOOD,
    drips_body,
    drips_headers,
    hangs,
    hangs_up,
    never_ends,
    odd_server,
    points_to,
    says,
    unpacks_to_a_flood,
)
from tests.services.processes import free_port
from trimops.outside.guard import Guard
from trimops.outside.guarded_http import Bounds, Question, ask
from trimops.outside.no_answer import NoAnswer, Why


def asked(answer, bounds=None, **question):
    with odd_server(answer) as server:
        guard = Guard(inner=frozenset({server.place}))
        return ask(
            Question(server.address + "/a?b=c", **question), guard, bounds or Bounds(seconds=5)
        ), server


def no_answer(answer, bounds=None, **question):
    with pytest.raises(NoAnswer) as no:
        asked(answer, bounds, **question)
    return no.value.why


def test_what_is_asked_arrives_and_what_is_answered_comes_back():
    answer, server = asked(says(b"heard", 410), method="POST", body=b"news", headers={"Webhook-Id": "7"})
    assert (answer.status, answer.body, answer.headers["content-length"]) == (410, b"heard", "5")
    assert (server.paths, server.bodies) == (["/a?b=c"], [b"news"])
    headers = server.headers[0]
    assert (headers["host"], headers["webhook-id"], headers["content-length"]) == (server.place, "7", "4")


def test_nothing_of_this_machine_is_told(monkeypatch):
    monkeypatch.setenv("HTTP_PROXY", "http://127.0.0.1:1")
    _, server = asked(says(b""))
    assert set(server.headers[0]) == {"host", "user-agent", "accept-encoding"}


@pytest.mark.parametrize(
    ("answer", "why"),
    [
        (hangs_up, Why.BROKE_OFF),
        (never_ends, Why.LARGE),
        (unpacks_to_a_flood, Why.LARGE),
        (says({}, 302), None),
        (points_to("http://127.0.0.1:1/"), Why.REFUSED),
        (points_to("file:///etc/passwd"), Why.REFUSED),
        (points_to("http://[::1"), Why.ELSEWHERE),
        (points_to("https://2130706433/"), Why.REFUSED),
    ],
)
def test_a_server_that_misbehaves_is_told_by_its_kind(answer, why):
    if why is None:
        assert asked(answer)[0].status == 302, "a redirect to nowhere is an answer like any other"
    else:
        assert no_answer(answer) is why


@pytest.mark.parametrize("answer", [hangs, drips_headers, drips_body])
def test_all_of_it_takes_no_longer_than_was_said(answer):
    began = time.monotonic()
    assert no_answer(answer, Bounds(seconds=0.6)) is Why.SLOW
    assert time.monotonic() - began < 2


def test_looking_up_a_name_takes_no_longer_either():
    def slow(host, port):
        time.sleep(3)
        return ["93.184.216.34"]

    with pytest.raises(NoAnswer) as no:
        ask(Question("https://slow.example/"), Guard(resolve=slow), Bounds(seconds=0.3))
    assert no.value.why is Why.SLOW


def test_a_flood_takes_no_more_memory_than_the_largest_allowed():
    tracemalloc.start()
    try:
        no_answer(unpacks_to_a_flood, Bounds(seconds=5, largest=200_000))
        peak = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert peak < 20 * len(FLOOD), "fifty million bytes were never there"


def test_a_packed_answer_is_unpacked():
    def packed(handler):
        body = gzip.compress(b"BEGIN:VCALENDAR")
        handler.send_response(200)
        handler.send_header("Content-Encoding", "gzip")
        handler.send_header("Content-Length", str(len(body)))
        handler.end_headers()
        handler.wfile.write(body)

    assert asked(packed)[0].body == b"BEGIN:VCALENDAR"


def test_redirects_are_followed_three_times_without_what_the_first_set():
    def goes_on(handler):
        number = int(handler.path.rpartition("/")[2] or 0) if handler.path != "/a?b=c" else 0
        handler.send_response(200 if number == stop else 302)
        handler.send_header("Set-Cookie", "a=b")
        handler.send_header("Location", f"/{number + 1}")
        handler.send_header("Content-Length", "0")
        handler.end_headers()

    stop = 3
    answer, server = asked(goes_on)
    assert (answer.status, server.paths) == (200, ["/a?b=c", "/1", "/2", "/3"])
    assert not any("cookie" in headers for headers in server.headers)
    stop = 4
    assert no_answer(goes_on) is Why.ELSEWHERE
    assert no_answer(goes_on, method="POST") is Why.ELSEWHERE


def test_every_hop_is_looked_at_like_the_first():
    with odd_server(says(b"inside")) as inner:
        assert no_answer(points_to(inner.address)) is Why.REFUSED
        assert inner.paths == []


def test_a_name_is_looked_up_once_so_that_it_cannot_change_its_mind():
    """The first answer is outside, each later one is this machine: whoever looked twice would be led in."""
    with odd_server(says(b"inside")) as server:
        port = int(server.place.partition(":")[2])
        heard = []

        def changes_its_mind(host, port):
            heard.append(host)
            return ["192.0.2.1" if len(heard) > 1 else "127.0.0.1"]

        guard = Guard(inner=frozenset({f"changing.example:{port}"}), resolve=changes_its_mind)
        answer = ask(Question(f"http://changing.example:{port}/"), guard, Bounds(seconds=3))
    assert (answer.body, heard) == (b"inside", ["changing.example"])
    assert server.headers[0]["host"] == f"changing.example:{port}"


def test_the_next_address_of_a_name_is_tried_when_the_first_is_dead():
    with odd_server(says(b"second")) as server:
        port = int(server.place.partition(":")[2])
        guard = Guard(frozenset({f"two.example:{port}"}), lambda host, port: ["127.0.0.2", "127.0.0.1"])
        assert ask(Question(f"http://two.example:{port}/"), guard, Bounds(seconds=3)).body == b"second"


def test_where_nobody_listens_nobody_answers():
    place = f"127.0.0.1:{free_port()}"
    with pytest.raises(NoAnswer) as no:
        ask(Question(f"http://{place}/"), Guard(frozenset({place})), Bounds(seconds=3))
    assert no.value.why is Why.AWAY


def test_who_cannot_prove_a_name_is_not_spoken_to(tmp_path):
    with odd_server(says(b"secret"), tls=own_certificate(tmp_path)) as server:
        guard = Guard(frozenset({server.place}))
        with pytest.raises(NoAnswer, match="certificate") as no:
            ask(Question(server.address), guard, Bounds(seconds=3))
    assert (no.value.why, server.paths) == (Why.AWAY, [])


def test_who_can_prove_it_is(tmp_path, monkeypatch):
    certificate = own_certificate(tmp_path)
    monkeypatch.setattr(
        "trimops.outside.guarded_http.trusted", lambda: ssl.create_default_context(cafile=certificate)
    )
    with odd_server(says(b"secret"), tls=certificate) as server:
        assert (
            ask(Question(server.address), Guard(frozenset({server.place})), Bounds(seconds=3)).body
            == b"secret"
        )


def own_certificate(folder):
    key = ec.generate_private_key(ec.SECP256R1())
    name = x509.Name([x509.NameAttribute(x509.NameOID.COMMON_NAME, "127.0.0.1")])
    now = datetime.now(UTC)
    certificate = (
        x509.CertificateBuilder()
        .subject_name(name)
        .issuer_name(name)
        .public_key(key.public_key())
        .serial_number(1)
        .not_valid_before(now - timedelta(days=1))
        .not_valid_after(now + timedelta(days=1))
        .add_extension(x509.SubjectAlternativeName([x509.IPAddress(ip_address("127.0.0.1"))]), critical=False)
        .sign(key, hashes.SHA256())
    )
    path = folder / "own.pem"
    path.write_bytes(
        key.private_bytes(
            serialization.Encoding.PEM, serialization.PrivateFormat.PKCS8, serialization.NoEncryption()
        )
        + certificate.public_bytes(serialization.Encoding.PEM)
    )
    return str(path)
