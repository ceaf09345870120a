"""Ids made on the phone, against RFC 9562."""

from uuid import RFC_4122, UUID

import pytest

from tests.browser.conftest import Site
from tests.browser.phone_modules import module_of

pytestmark = pytest.mark.xdist_group("browser")


@pytest.fixture
def uuid7(door: Site):
    return module_of(door, "uuid7.js")


def test_ids_are_version_7_and_carry_the_time_in_their_first_48_bits(uuid7):
    # because: between the phone's clock and ours some milliseconds may lie, even on one machine
    told = uuid7.run(
        """const before = Date.now();
        const made = Array.from({length: 100}, () => it.uuid7());
        return {before, made, after: Date.now()};"""
    )
    made = [UUID(each) for each in told["made"]]

    assert {(each.version, each.variant) for each in made} == {(7, RFC_4122)}
    assert all(told["before"] <= each.int >> 80 <= told["after"] for each in made)


def test_the_moment_of_the_standards_example_is_written_as_the_standard_writes_it(uuid7):
    # RFC 9562, appendix A.6 (from memory): 2022-02-22 14:22:22 at UTC-5 begins 017f22e2-79b0-7.
    moment = "return it.uuid7(Date.parse('2022-02-22T14:22:22-05:00'))"
    assert uuid7.run(moment).startswith("017f22e2-79b0-7")


def test_ids_rise_within_one_millisecond_past_the_counter_and_when_the_clock_is_set_back(uuid7):
    made = uuid7.run(
        """const now = Date.now();
        const moments = [...Array(9000).fill(now), now - 7_200_000, now - 7_200_000, now + 5, now + 5];
        return moments.map((moment) => it.uuid7(moment));"""
    )
    assert made == sorted(made)
    assert len(set(made)) == len(made) == 9004
