"""A backup file gives back what was packed, and says so where it cannot."""

import hashlib
import io
import json
import tarfile
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.random_examples import examples
from tests.trimops.backup.small_places import AT, KEY
from trimops.backup.archive import read_manifest, unpack, write_archive
from trimops.backup.contents import Contents, TableSum
from trimops.backup.disk import FileSum
from trimops.backup.errors import FaultyBackup, OlderProgram, WrongKey
from trimops.backup.manifest import FORMAT, Manifest, from_json, to_json

DUMP, MAIL = b"rows" * 5000, b"Subject: hooves\n"


def summed(raw: bytes) -> FileSum:
    return FileSum(len(raw), hashlib.sha256(raw).hexdigest())


CONTENTS = Contents("3.40", {"cow": TableSum(5, "ab" * 32)}, ["trigger cow_stays"], ["farms.0001_initial"])
MANIFEST = Manifest(
    AT, "0.1.0", "sqlite", "3.40", "database.sqlite3", summed(DUMP), CONTENTS, {"mail/ø.log": summed(MAIL)}
)


@pytest.fixture(scope="module")
def packed(tmp_path_factory):
    folder = tmp_path_factory.mktemp("packed")
    (folder / "files" / "mail").mkdir(parents=True)
    (folder / "database.sqlite3").write_bytes(DUMP)
    (folder / "files" / "mail" / "ø.log").write_bytes(MAIL)
    write_archive(folder / "open.tar", MANIFEST, folder, None)
    write_archive(folder / "sealed.tar.enc", MANIFEST, folder, KEY)
    return folder


@pytest.mark.parametrize(("name", "key"), [("open.tar", None), ("open.tar", KEY), ("sealed.tar.enc", KEY)])
def test_what_was_packed_comes_out(packed, tmp_path, name, key):
    assert read_manifest(packed / name, key) == MANIFEST
    assert unpack(packed / name, key, tmp_path) == MANIFEST
    assert (tmp_path / "database.sqlite3").read_bytes() == DUMP
    assert (tmp_path / "files" / "mail" / "ø.log").read_bytes() == MAIL
    assert (tmp_path / "database.sqlite3").stat().st_mode & 0o777 == 0o600
    assert (packed / name).stat().st_mode & 0o777 == 0o600


def test_an_open_backup_is_a_tar_that_any_tar_reads(packed):
    with tarfile.open(packed / "open.tar") as tar:
        assert tar.getnames() == ["manifest.json", "manifest.sha256", "database.sqlite3", "files/mail/ø.log"]
        assert json.load(tar.extractfile("manifest.json"))["made_at"] == "2026-11-30T02:00:00+00:00"


def test_a_sealed_one_wants_its_key(packed, tmp_path):
    with pytest.raises(WrongKey, match="TRIMOPS_BACKUP_KEY"):
        unpack(packed / "sealed.tar.enc", None, tmp_path)
    with pytest.raises(WrongKey):
        unpack(packed / "sealed.tar.enc", KEY + "!", tmp_path)
    assert list(tmp_path.iterdir()) == []


def test_who_refuses_the_manifest_gets_nothing_unpacked(packed, tmp_path):
    def refuse(manifest):
        raise OlderProgram(manifest.program)

    with pytest.raises(OlderProgram, match=r"0\.1\.0"):
        unpack(packed / "open.tar", None, tmp_path, refuse)
    assert list(tmp_path.iterdir()) == []


@given(st.data())
@settings(max_examples=examples(90))
def test_an_open_one_cut_short_before_its_end_is_refused(packed, tmp_path_factory, data):
    raw = (packed / "open.tar").read_bytes()
    # Behind the last file a tar is nought and nothing else; what of that is missing was nothing.
    end = data.draw(st.integers(0, raw.rindex(MAIL) + len(MAIL) - 1))
    refused(tmp_path_factory, raw[:end])


@given(st.data())
@settings(max_examples=examples(90))
def test_a_byte_of_the_contents_altered_is_noticed(packed, tmp_path_factory, data):
    raw = bytearray((packed / "open.tar").read_bytes())
    part = data.draw(st.sampled_from([to_json(MANIFEST), DUMP, MAIL]))
    raw[raw.index(part) + data.draw(st.integers(0, len(part) - 1))] ^= data.draw(st.integers(1, 255))
    refused(tmp_path_factory, bytes(raw))


def refused(tmp_path_factory, raw):
    folder = tmp_path_factory.mktemp("altered")
    (folder / "a.tar").write_bytes(raw)
    with pytest.raises(FaultyBackup):
        unpack(folder / "a.tar", None, folder / "out")


@pytest.mark.parametrize("name", ["files/../../../outside", "/etc/outside", "unknown"])
def test_a_name_of_which_the_manifest_knows_nothing_is_never_written(tmp_path, name):
    with pytest.raises(FaultyBackup, match="knows nothing"):
        unpack(tar_of(tmp_path, MANIFEST, name), None, tmp_path / "a" / "b")
    assert not (tmp_path / "outside").exists()


@pytest.mark.parametrize("place", ["{}/outside", "../../outside", "a/../../../outside", ".", ""])
def test_a_manifest_that_names_a_place_of_this_machine_is_refused_before_anything_is_written(tmp_path, place):
    """Of a backup that somebody else handed over: the database's dump stands without a folder before it."""
    name = place.format(tmp_path)
    for told in (replace(MANIFEST, dump=name), replace(MANIFEST, files={name: summed(MAIL)})):
        with pytest.raises(FaultyBackup, match="outside of itself"):
            unpack(tar_of(tmp_path, told, name or "x"), None, tmp_path / "a" / "b")
    assert not (tmp_path / "outside").exists()
    assert not (tmp_path / "a").exists()


def test_a_link_in_the_file_is_refused(tmp_path):
    path = tmp_path / "link.tar"
    with tarfile.open(path, "w") as tar:
        member = tarfile.TarInfo("manifest.json")
        member.type, member.linkname = tarfile.SYMTYPE, "/etc/passwd"
        tar.addfile(member)
    with pytest.raises(FaultyBackup, match="no plain file"):
        unpack(path, None, tmp_path / "out")


def tar_of(folder, manifest, name):
    raw = to_json(manifest)
    members = {
        "manifest.json": raw,
        "manifest.sha256": hashlib.sha256(raw).hexdigest().encode(),
        "database.sqlite3": DUMP,
        name: MAIL,
    }
    with tarfile.open(folder / "made.tar", "w") as tar:
        for named, content in members.items():
            member = tarfile.TarInfo(named)
            member.size = len(content)
            tar.addfile(member, io.BytesIO(content))
    return folder / "made.tar"


@pytest.mark.parametrize("raw", [b"", b"not a tar at all" * 100, b"\x00" * 20480])
def test_what_is_no_backup_is_refused(tmp_path, raw):
    (tmp_path / "a.tar").write_bytes(raw)
    with pytest.raises(FaultyBackup):
        unpack(tmp_path / "a.tar", None, tmp_path / "out")


def test_a_manifest_is_read_as_it_was_written():
    assert from_json(to_json(MANIFEST)) == MANIFEST


def test_a_newer_form_is_refused_as_such():
    told = json.loads(to_json(MANIFEST))
    with pytest.raises(OlderProgram):
        from_json(json.dumps({**told, "format": FORMAT + 1, "contents": "in another way"}).encode())


@pytest.mark.parametrize(
    "change",
    [{"format": None}, {"made_at": 5}, {"dump_sum": []}, {"files": {"a": {"size": "1"}}}, {"contents": {}}],
)
def test_a_manifest_that_lacks_something_is_refused(change):
    told = {**json.loads(to_json(MANIFEST)), **change}
    with pytest.raises(FaultyBackup, match="manifest"):
        from_json(json.dumps(told).encode())
