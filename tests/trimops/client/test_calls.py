"""What the client does when it is refused for now, or when the line breaks."""

import httpx
import pytest

from trimops.client.calls import TRIES, Calls
from trimops.client.refused import Refused


def calls_of(answer):
    """A client whose server is `answer`; what it was asked, and how long it waited."""
    asked, waited = [], []

    def told(request):
        asked.append(request)
        return answer(len(asked))

    http = httpx.Client(transport=httpx.MockTransport(told))
    return Calls("https://site.example", "secret", http=http, pause=waited.append), asked, waited


def test_it_waits_as_long_as_it_is_told_and_keeps_the_key():
    def answer(count):
        return (
            httpx.Response(429, headers={"Retry-After": "7"})
            if count < 3
            else httpx.Response(201, json={"id": 1})
        )

    calls, asked, waited = calls_of(answer)
    assert calls.done("/farms/", {"name": "Upper"}, "") == {"id": 1}
    assert waited == [7, 7]
    assert len({request.headers["Idempotency-Key"] for request in asked}) == 1
    assert {request.headers["Authorization"] for request in asked} == {"Bearer secret"}


def test_a_broken_line_is_tried_again_and_then_told():
    def answer(count):
        raise httpx.ConnectError("no line")

    calls, asked, _ = calls_of(answer)
    with pytest.raises(httpx.ConnectError):
        calls.asked("/farms/", {})
    assert len(asked) == TRIES


def test_who_is_refused_for_good_is_told_at_once():
    told = {"code": "not_allowed", "detail": "No.", "faults": [{"field": "a", "reason": "b"}]}
    calls, asked, _ = calls_of(lambda count: httpx.Response(403, json=told))
    with pytest.raises(Refused) as refused:
        calls.asked("/farms/", {})
    assert (refused.value.code, refused.value.faults, len(asked)) == ("not_allowed", [("a", "b")], 1)


def test_what_is_no_problem_at_all_is_told_all_the_same():
    calls, _, _ = calls_of(lambda count: httpx.Response(502, text="<html>"))
    with pytest.raises(Refused) as refused:
        calls.asked("/farms/", {})
    assert (refused.value.status, refused.value.detail) == (502, "<html>")


def test_words_of_a_query_are_as_the_api_reads_them():
    calls, asked, _ = calls_of(lambda count: httpx.Response(200, json={"items": [], "next": None}))
    assert list(calls.pages("/farms/", {"is_active": True, "limit": 2, "name": None})) == []
    assert str(asked[0].url) == "https://site.example/api/v1/farms/?is_active=true&limit=2"


def test_a_file_says_what_it_is():
    calls, asked, _ = calls_of(lambda count: httpx.Response(201, json={}))
    calls.done(
        "/bank-files/whole/", b"<x/>", "k", query={"file_name": "a.xml"}, kind="application/octet-stream"
    )
    calls.sent("PUT", "/visits/1/crush/photos/2/", {}, b"...", kind="image/jpeg")
    assert [each.headers["Content-Type"] for each in asked] == ["application/octet-stream", "image/jpeg"]
    assert asked[0].url.params["file_name"] == "a.xml"
