"""Sealing a stream with a passphrase: AES-256-GCM in chunks, so that memory stays small and no end can be cut off.

Head: MAGIC, log2 of scrypt's cost, salt (16 bytes), HMAC-SHA-256 of these. scrypt (RFC 7914; r=8, p=1) makes 64
bytes of the passphrase: half for the chunks, half for the HMAC, which tells a wrong key from an altered file. A chunk
is 1 MiB and its tag of 16 bytes. Its nonce is its number (11 bytes) and 1 for the last chunk, else 0 (the STREAM
construction, Hoang, Reyhanitabar, Rogaway, Vizár 2015; from memory); the head is the additional data of each. The
salt is new for each file, so is the key, so no nonce comes twice under one.
"""

import hashlib
import hmac
import secrets
from typing import BinaryIO

from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.ciphers.aead import AESGCM
from cryptography.hazmat.primitives.kdf.scrypt import Scrypt

from trimops.backup.errors import FaultyBackup, WrongKey

MAGIC = b"trimops-sealed-1\n"
CHUNK = 1 << 20
TAG = 16
SALT = 16
MAC = 32
COST = 17
"""2**17 x 8 x 128 bytes: 128 MiB and some tenths of a second for each guess (as OWASP advised; from memory)."""
HIGHEST_COST = 20
SHORTEST_KEY = 12


class SealingWriter:
    """Takes plain bytes by `write` and gives sealed ones to `sink`; nothing is whole before `close`."""

    def __init__(self, sink: BinaryIO, key: str, *, cost: int = COST) -> None:
        self._sink = sink
        self._head = MAGIC + bytes([cost]) + secrets.token_bytes(SALT)
        self._cipher, mac = _keys(key, self._head)
        self._sink.write(self._head + mac)
        self._waiting = bytearray()
        self._number = 0

    def write(self, data: bytes) -> int:
        self._waiting += data
        # because: the last chunk is marked, and which one that is shows only at the end
        while len(self._waiting) > CHUNK:
            self._seal(bytes(self._waiting[:CHUNK]), is_last=False)
            del self._waiting[:CHUNK]
        return len(data)

    def close(self) -> None:
        """Seal what is left as the last chunk; the sink stays open."""
        self._seal(bytes(self._waiting), is_last=True)
        self._waiting.clear()

    def _seal(self, plain: bytes, *, is_last: bool) -> None:
        self._sink.write(self._cipher.encrypt(_nonce(self._number, is_last=is_last), plain, self._head))
        self._number += 1


class OpeningReader:
    """Gives the plain bytes of a sealed `source` by `read`. FaultyBackup, WrongKey where it does not open."""

    def __init__(self, source: BinaryIO, key: str) -> None:
        self._source = source
        self._head = source.read(len(MAGIC) + 1 + SALT)
        told = source.read(MAC)
        if not self._head.startswith(MAGIC) or len(told) < MAC:
            raise FaultyBackup("This is no sealed backup, or only its first bytes.")
        self._cipher, mac = _keys(key, self._head)
        if not hmac.compare_digest(mac, told):
            raise WrongKey("The key does not open this backup. (Or its first bytes were altered.)")
        self._ahead = self._block()
        self._number = 0
        self._is_over = False
        self._plain = b""

    def read(self, size: int) -> bytes:
        """At most `size` plain bytes; none at the end, which was proven to be the end."""
        while not self._plain and not self._is_over:
            self._plain = self._next_chunk()
        given, self._plain = self._plain[:size], self._plain[size:]
        return given

    def _next_chunk(self) -> bytes:
        sealed, self._ahead = self._ahead, self._block()
        self._is_over = not self._ahead
        try:
            plain = self._cipher.decrypt(_nonce(self._number, is_last=self._is_over), sealed, self._head)
        except InvalidTag:
            at = self._number * (CHUNK + TAG)
            raise FaultyBackup(
                f"The sealed backup was altered or cut short, {at:,} bytes in or after."
            ) from None
        self._number += 1
        return plain

    def _block(self) -> bytes:
        return self._source.read(CHUNK + TAG)


def is_sealed(source: BinaryIO) -> bool:
    """Whether the file at its beginning is sealed; it is put back to where it was."""
    begins = source.read(len(MAGIC))
    source.seek(-len(begins), 1)
    return begins == MAGIC


def refuse_weak_key(key: str) -> str:
    """The key itself; WrongKey where it is too short to keep anything closed."""
    if len(key) < SHORTEST_KEY:
        raise WrongKey(f"A key has at least {SHORTEST_KEY} signs. A good one: openssl rand -base64 32")
    return key


def _keys(key: str, head: bytes) -> tuple[AESGCM, bytes]:
    """The cipher of the chunks, and the HMAC of the head."""
    cost = head[len(MAGIC)]
    if not 1 <= cost <= HIGHEST_COST:
        raise FaultyBackup("The first bytes of this backup were altered.")
    made = Scrypt(salt=head[len(MAGIC) + 1 :], length=64, n=2**cost, r=8, p=1).derive(key.encode())
    return AESGCM(made[:32]), hmac.new(made[32:], head, hashlib.sha256).digest()


def _nonce(number: int, *, is_last: bool) -> bytes:
    return number.to_bytes(11, "big") + bytes([is_last])
