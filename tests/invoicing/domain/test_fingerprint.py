from invoicing.domain.fingerprint import fingerprint


def test_it_is_the_sha_256():
    """Of "abc": FIPS 180-2, appendix B.1."""
    assert fingerprint(b"abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"


def test_what_is_not_there_has_no_fingerprint():
    assert fingerprint(b"") == ""
