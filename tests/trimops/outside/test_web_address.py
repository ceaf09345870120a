import pytest

from trimops.outside.no_answer import NoAnswer, Why
from trimops.outside.web_address import led_on, read_address


def test_an_address_is_read_in_its_plain_form():
    address = read_address("HTTPS://Books.EXAMPLE.:443/a b?c=d#e")
    assert (address.text, address.host, address.port) == (
        "https://books.example/a%20b?c=d",
        "books.example",
        443,
    )
    assert (address.authority, address.path) == (b"books.example", b"/a%20b?c=d")
    assert read_address("http://[::1]:8025/").place == "[::1]:8025"


@pytest.mark.parametrize(
    ("location", "leads"),
    [
        ("/other", "https://books.example/other"),
        ("next", "https://books.example/a/next"),
        ("//else.example/x", "https://else.example/x"),
        ("http://else.example/", "http://else.example/"),
    ],
)
def test_a_redirect_leads_on_from_there(location, leads):
    assert led_on(read_address("https://books.example/a/b"), location) == leads


def test_a_redirect_to_nothing_is_told():
    with pytest.raises(NoAnswer) as no:
        led_on(read_address("https://books.example/"), "http://[::1")
    assert no.value.why is Why.ELSEWHERE
