from ipaddress import IPv4Address, IPv6Address, ip_address

import pytest
from hypothesis import given
from hypothesis import strategies as st

from trimops.outside.inner_addresses import inner_because

OUTSIDE = [
    "8.8.8.8",
    "1.1.1.1",
    "93.184.216.34",
    "2606:4700:4700::1111",
    "2a00:1450:4009::8a",
    "64:ff9b::808:808",
]
INSIDE = [
    *("127.0.0.1", "127.255.255.254", "0.0.0.0", "0.1.2.3", "10.0.0.1", "172.16.0.1", "172.31.255.255"),
    *("192.168.1.1", "169.254.169.254", "100.64.0.1", "100.100.100.200", "192.0.0.192", "198.18.0.1"),
    *("192.0.2.1", "198.51.100.7", "203.0.113.9", "224.0.0.1", "239.255.255.255", "240.0.0.1"),
    *("255.255.255.255", "192.88.99.1", "168.63.129.16"),
    *("::", "::1", "fe80::1", "fe80::1%eth0", "fc00::1", "fd00:ec2::254", "fec0::1", "ff02::1", "100::1"),
    *("::ffff:127.0.0.1", "::ffff:8.8.8.8", "::ffff:0:127.0.0.1", "::127.0.0.1", "::7f00:1"),
    *("2002:7f00:1::", "2002:a00:1::1", "2001:0:4136:e378:8000:63bf:3fff:fdd2", "2001:db8::1", "3fff::1"),
    *("64:ff9b::7f00:1", "64:ff9b::a9fe:a9fe", "64:ff9b:1::1", "5f00::1", "2a00::5efe:7f00:1", "2001:2::1"),
    *("", "localhost", "127.1", "0x7f000001", "2130706433", "017700000001"),
]


@pytest.mark.parametrize("address", OUTSIDE)
def test_an_address_of_the_open_internet_may_be_asked(address):
    assert inner_because(address) == ""


@pytest.mark.parametrize("address", INSIDE)
def test_an_inner_address_is_told_by_a_word(address):
    assert inner_because(address)


@given(st.integers(0, 2**32 - 1))
def test_no_address_that_the_standard_library_calls_inner_may_be_asked(number):
    address = IPv4Address(number)
    if not address.is_global or address.is_multicast:
        assert inner_because(str(address))


@given(st.one_of(st.integers(0, 2**128 - 1), st.integers(0x2000 << 112, 0x4000 << 112)))
def test_nor_one_of_ipv6(number):
    address = IPv6Address(number)
    if not address.is_global or address.is_multicast:
        assert inner_because(str(address))


@given(st.integers(0, 2**32 - 1))
def test_behind_nat64_an_address_is_as_far_inside_as_the_one_it_carries(number):
    carrying = IPv6Address(int(ip_address("64:ff9b::")) + number)
    assert inner_because(str(carrying)) == inner_because(str(IPv4Address(number)))
