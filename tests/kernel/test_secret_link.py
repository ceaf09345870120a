import hashlib

from trimops.kernel.secret_link import hash_of, new_secret


def test_a_secret_is_never_the_same_and_holds_256_bits():
    drawn = {new_secret() for _ in range(50)}
    assert len(drawn) == 50
    assert {len(secret) for secret in drawn} == {43}  # base 64, six bits a letter


def test_what_is_kept_is_its_sha_256():
    assert hash_of("a secret") == hashlib.sha256(b"a secret").hexdigest()
