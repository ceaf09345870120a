"""What lies beside the data says how to read it."""

import json
from datetime import datetime
from zoneinfo import ZoneInfo

from tests.visits.documents.data_tables import TABLE
from visits.documents.csv_file import csv_file
from visits.documents.data_words import ade_files, csv_files

AT = datetime(2026, 7, 2, 12, tzinfo=ZoneInfo("Europe/London"))


def test_every_table_has_its_file_and_is_told_of_with_its_number_of_rows():
    files = dict(csv_files([TABLE], "Low Croft", AT))
    told = files.pop("read me first.txt").decode()
    assert files == {"hard cases.csv": csv_file(TABLE)}
    assert f"hard cases.csv: What goes wrong elsewhere. {len(TABLE.rows)} rows." in told
    assert "Low Croft" in told
    assert "2026-07-02 12:00" in told
    assert "Europe/London" in told


def test_every_document_has_its_file_and_the_gap_is_told():
    members = [{"name": "Ærø"}, {"name": "B"}]
    files = dict(ade_files({"animals": iter(members), "attention": iter(())}, "Low Croft", AT))
    told = files.pop("read me first.txt").decode()
    assert json.loads(files["animals.json"])["member"] == members
    assert json.loads(files["animals.json"])["view"]["totalItems"] == 2
    assert json.loads(files["attention.json"])["member"] == []
    assert "not at hand" in told
    assert "not a veterinary diagnosis" in told
