"""Which network addresses lie inside, so that nothing a user types may make us ask there.

From the IANA special-purpose registries of IPv4 and IPv6 (RFC 6890 and its followers), written from memory; the tests
hold them against the standard library's.
"""

from ipaddress import IPv4Address, IPv6Address, ip_address, ip_network

_INNER_4 = {
    "0.0.0.0/8": "this network",
    "10.0.0.0/8": "private",
    "100.64.0.0/10": "shared by a provider's customers",
    "127.0.0.0/8": "this machine",
    "168.63.129.16/32": "a cloud's own service",
    "169.254.0.0/16": "this link",
    "172.16.0.0/12": "private",
    "192.0.0.0/24": "kept for protocols",
    "192.0.2.0/24": "kept for examples",
    "192.31.196.0/24": "kept for protocols",
    "192.52.193.0/24": "kept for protocols",
    "192.88.99.0/24": "a relay",
    "192.168.0.0/16": "private",
    "192.175.48.0/24": "kept for protocols",
    "198.18.0.0/15": "kept for measuring",
    "198.51.100.0/24": "kept for examples",
    "203.0.113.0/24": "kept for examples",
    "224.0.0.0/4": "many at once",
    "240.0.0.0/4": "kept for later",
}
_OUTER_6 = ip_network("2000::/3")
_INNER_6 = {
    "2001::/23": "kept for protocols",
    "2001:db8::/32": "kept for examples",
    "2002::/16": "a tunnel",
    "2620:4f:8000::/48": "kept for protocols",
    "3fff::/20": "kept for examples",
}
_NETWORKS_4 = {ip_network(text): word for text, word in _INNER_4.items()}
_NETWORKS_6 = {ip_network(text): word for text, word in _INNER_6.items()}
_NAT64 = ip_network("64:ff9b::/96")
_ISATAP = (0x00005EFE, 0x02005EFE)
_LOW_32 = 2**32 - 1


def inner_because(text: str) -> str:
    """Why the address may not be asked, in a word or two; empty for a global unicast one.

    An IPv6 address that carries an IPv4 one is as far inside as that: behind NAT64 it may be asked when the other may,
    while mapped, compatible and tunnelled ones never are, since nobody outside answers there.
    """
    try:
        address = ip_address(text.partition("%")[0])
    except ValueError:
        return "no address"
    return _because_4(address) if isinstance(address, IPv4Address) else _because_6(address)


def _because_4(address: IPv4Address) -> str:
    return next((word for network, word in _NETWORKS_4.items() if address in network), "")


def _because_6(address: IPv6Address) -> str:
    if address in _NAT64:
        return _because_4(IPv4Address(int(address) & _LOW_32))
    if address not in _OUTER_6:
        return "private or of this machine"
    if int(address) >> 32 & _LOW_32 in _ISATAP:
        return "a tunnel"
    return next((word for network, word in _NETWORKS_6.items() if address in network), "")
