"""Addresses that a user could type to be led inside (from memory of what is known to be tried), and who says no."""

import pytest

from trimops.outside.guard import Guard
from trimops.outside.no_answer import NoAnswer, Why

# What a name of each kind resolves to, as a resolver of somebody else's would answer.
NAMES = {
    "127.0.0.1.names.example": ["127.0.0.1"],
    "metadata.example": ["169.254.169.254"],
    "both.example": ["93.184.216.34", "10.0.0.5"],
    "six.example": ["::1"],
    "mapped.example": ["::ffff:10.0.0.1"],
    "nat.example": ["64:ff9b::a00:1"],
    "tunnel.example": ["2002:7f00:1::1"],
    "link.example": ["fe80::1%eth0"],
    "localhost": ["127.0.0.1"],
    "localhost.localdomain": ["127.0.0.1"],
    "intranet": ["192.168.1.1"],
    "cgnat.example": ["100.64.1.1"],
    "many.example": ["224.0.0.251"],
    "zero.example": ["0.0.0.0"],
    "good.example": ["93.184.216.34"],
    "xn--mnchen-3ya.example": ["93.184.216.34"],
}
HOSTILE = [
    *("https://127.0.0.1/", "https://127.0.0.1./", "https://127.1/", "https://127.0.1/", "https://0/"),
    *("https://2130706433/", "https://017700000001/", "https://0x7f000001/", "https://0x7f.1/"),
    *("https://0177.0.0.1/", "https://127.0.0.0x1/", "https://10.0.0.1/", "https://192.168.0.1/a"),
    *("https://169.254.169.254/latest/meta-data/", "https://100.100.100.200/", "https://168.63.129.16/"),
    *("https://[::1]/", "https://[::]/", "https://[::ffff:127.0.0.1]/", "https://[0:0:0:0:0:ffff:7f00:1]/"),
    *("https://[64:ff9b::7f00:1]/", "https://[2002:7f00:1::]/", "https://[fd00:ec2::254]/"),
    *("https://[fe80::1%25eth0]/", "https://[fe80::1]/", "https://[ff02::1]/", "https://[::127.0.0.1]/"),
    *("https://localhost/", "https://LOCALHOST/", "https://localhost./", "https://localhost.localdomain/"),
    *("https://127.0.0.1.names.example/", "https://metadata.example/", "https://both.example/"),
    *("https://six.example/", "https://mapped.example/", "https://nat.example/", "https://tunnel.example/"),
    *("https://link.example/", "https://intranet/", "https://cgnat.example/", "https://many.example/"),
    *("https://zero.example/", "https://METADATA.example/", "https://metadata.example./"),
    *(
        "https://127\u30020\u30020\u30021/",
        "https://\uff11\uff12\uff17.0.0.1/",
        "https://\u2460\u2461\u2466.0.0.1/",
    ),
    *(
        "https://good.example@127.0.0.1/",
        "https://127.0.0.1#@good.example/",
        "https://127.0.0.1?@good.example/",
    ),
    *(
        "https://127.0.0.1\\@good.example/",
        "https://good.example:pw@metadata.example/",
        "https://@127.0.0.1/",
    ),
    *("https://user@good.example/", "https://user:pw@good.example/", "https://:@good.example/"),
    *(
        "https://good.example:22/",
        "https://good.example:8443/",
        "https://good.example:6379/",
        "https://good.example:0/",
    ),
    *("https://good.example:99999/", "https://good.example:-1/", "http://good.example/", "http://127.0.0.1/"),
    *(
        "file:///etc/passwd",
        "gopher://127.0.0.1:6379/_x",
        "ftp://good.example/",
        "dict://127.0.0.1:11211/",
        "ldap://x/",
    ),
    *(
        "javascript:alert(1)",
        "//127.0.0.1/",
        "good.example",
        "",
        " ",
        "https://",
        "https:///x",
        "https://%31%32%37.0.0.1/",
    ),
    *(
        "https://127.0.0.1%00.good.example/",
        "https://good.example\r\nHost: x/",
        "https://good.example%0d%0a/",
    ),
    *("https://good .example/", "https://good.example%2f@127.0.0.1/", "https://[::1", "https://[127.0.0.1]/"),
    *("https://..example/", "https://.../", "https://good..example/", "unix:///var/run/docker.sock"),
]


def resolve(host, port):
    if host in NAMES:
        return NAMES[host]
    raise NoAnswer(Why.AWAY, f"no name {host}")


def led_to(address, guard=None):
    guard = guard or Guard(resolve=resolve)
    return guard.addresses(guard.target(address))


def test_there_are_forty_or_more_of_them():
    assert len(set(HOSTILE)) >= 40


@pytest.mark.parametrize("address", HOSTILE, ids=ascii)
def test_a_hostile_address_leads_nowhere(address):
    with pytest.raises(NoAnswer) as no:
        led_to(address)
    assert no.value.why is Why.REFUSED, "it is refused, not only unknown by luck"


@pytest.mark.parametrize(
    "address",
    [
        *("https://good.example", "https://GOOD.example./a?b=c#d", "https://good.example:443/x"),
        *("https://good.example:80/", "https://m\u00fcnchen.example/", "https://good\u3002example/"),
    ],
)
def test_an_address_outside_is_asked_where_its_name_says(address):
    assert led_to(address) == ["93.184.216.34"]


def test_a_number_of_the_open_internet_may_be_asked_without_a_name():
    guard = Guard(resolve=lambda host, port: [host])
    assert led_to("https://93.184.216.34/", guard) == ["93.184.216.34"]
    assert led_to("https://[2606:4700::1]/", guard) == ["2606:4700::1"]


def test_what_the_operator_named_is_asked_inside_and_nothing_beside_it():
    guard = Guard(inner=frozenset({"127.0.0.1:8025", "[::1]:81"}), resolve=lambda host, port: [host])
    assert led_to("http://127.0.0.1:8025/", guard) == ["127.0.0.1"]
    assert led_to("http://[::1]:81/", guard) == ["::1"]
    for beside in (
        "http://127.0.0.1:8026/",
        "http://127.0.0.2:8025/",
        "https://127.0.0.1/",
        "http://x@127.0.0.1:8025/",
    ):
        with pytest.raises(NoAnswer):
            led_to(beside, guard)


def test_the_fragment_never_leaves_and_the_name_is_sent_in_its_plain_form():
    target = Guard(resolve=resolve).target("https://GOOD.example./a?b=c#secret")
    assert target.text == "https://good.example/a?b=c"


def test_a_name_that_nobody_has_is_away():
    with pytest.raises(NoAnswer) as no:
        Guard().addresses(Guard().target("https://nobody.invalid/"))
    assert no.value.why is Why.AWAY


@pytest.mark.parametrize(
    ("address", "is_asked"),
    [
        ("https://good.example/", True),
        ("https://GOOD.example./x", True),
        ("https://calendar.good.example/", True),
        ("http://inside.example:81/", True),
        ("https://bad.example/", False),
        ("https://notgood.example/", False),
        ("https://good.example.bad.example/", False),
        ("https://93.184.216.34/", False),
    ],
)
def test_where_names_are_listed_no_other_is_asked(address, is_asked):
    guard = Guard(frozenset({"inside.example:81"}), resolve, names=frozenset({"good.example"}))
    if is_asked:
        guard.target(address)
        return
    with pytest.raises(NoAnswer, match="not on the list") as no:
        guard.target(address)
    assert no.value.why is Why.REFUSED
