"""The static files of a release: one folder that names their contents, packed; those before it stay for a while."""

import gzip
import os

import pytest
from django.contrib.staticfiles import finders
from django.core.management import call_command

from trimops.web.release_files import RELEASES_KEPT, ReleaseFiles, is_collected, release_folder

BACKEND = {"BACKEND": "trimops.web.release_files.ReleaseFiles"}


@pytest.fixture
def more(settings, tmp_path):
    """A folder whose files are those of the program as well; nothing was collected yet."""
    folder = tmp_path / "more"
    folder.mkdir()
    settings.STATICFILES_DIRS, settings.STATIC_ROOT = [folder], tmp_path / "collected"
    settings.STORAGES = {**settings.STORAGES, "staticfiles": BACKEND}
    settings.IS_COLLECTED = True
    _forget()
    yield folder
    settings.STATICFILES_DIRS = []
    _forget()


def _forget():
    release_folder.cache_clear()
    finders.get_finder.cache_clear()


def written(folder, text):
    (folder / "a.js").write_text(text)
    _forget()
    return release_folder()


def test_the_folder_is_another_one_when_any_file_is(more):
    first, second = written(more, "1"), written(more, "2")
    assert first != second
    assert written(more, "1") == first
    (more / "b.js").write_text("1")
    _forget()
    assert release_folder() not in (first, second)


def test_an_address_names_the_release_and_what_it_leads_to_lies_there_packed(more, settings):
    name = written(more, "const a = 1;\n" * 200)
    assert not is_collected()
    call_command("collectstatic", "--noinput", verbosity=0)
    assert is_collected()
    assert ReleaseFiles().url("a.js") == f"/static/{name}/a.js"
    lies = settings.STATIC_ROOT / name / "a.js"
    assert gzip.decompress(lies.with_suffix(".js.gz").read_bytes()) == lies.read_bytes()
    assert (settings.STATIC_ROOT / name / "visits/crush/app.js").exists()


def test_pages_that_are_open_go_on_with_the_files_of_theirs_for_a_few_releases(more, settings):
    for number in range(RELEASES_KEPT + 2):
        old = settings.STATIC_ROOT / f"r-{number:012}"
        old.mkdir(parents=True)
        os.utime(old, (number, number))
    name = written(more, "newest")
    call_command("collectstatic", "--noinput", verbosity=0)
    left = sorted(each.name for each in settings.STATIC_ROOT.iterdir())
    assert left == sorted([name, *(f"r-{number:012}" for number in range(3, RELEASES_KEPT + 2))])


def test_where_nothing_is_collected_nothing_needs_to_be(settings):
    settings.IS_COLLECTED = False
    assert is_collected()
