"""Footers as zone files carry them. Form: POSIX TZ and RFC 9636, section 3.3; the zones' rules: IANA tzdata."""

from datetime import timedelta
from zoneinfo import ZoneInfoNotFoundError

import pytest

from visits.documents.zone_footer import YearlyChange, ZoneRule, read_footer, zone_rule

HOUR = timedelta(hours=1)


def test_summer_time_begins_and_ends_by_the_rule_of_the_zone():
    rule = read_footer("GMT0BST,M3.5.0/1,M10.5.0")
    assert rule == ZoneRule(
        "GMT", 0 * HOUR, "BST", HOUR, YearlyChange(3, 5, 0, HOUR), YearlyChange(10, 5, 0, 2 * HOUR)
    )


def test_signs_are_the_other_way_round_in_posix():
    assert read_footer("EST5EDT,M3.2.0,M11.1.0").offset == -5 * HOUR
    assert read_footer("<+0545>-5:45") == ZoneRule("+0545", timedelta(hours=5, minutes=45))


def test_an_offset_of_summer_time_other_than_an_hour_is_read():
    rule = read_footer("<+1030>-10:30<+11>-11,M10.1.0,M4.1.0")
    assert (rule.offset, rule.summer_offset) == (10.5 * HOUR, 11 * HOUR)


def test_changes_before_midnight_and_after_the_day_are_read():
    rule = read_footer("<-02>2<-01>,M3.5.0/-1,M10.5.0/0")
    assert (rule.summer_begins.at, rule.summer_ends.at) == (-HOUR, 0 * HOUR)
    assert read_footer("IST-2IDT,M3.4.4/26,M10.5.0").summer_begins.at == 26 * HOUR


@pytest.mark.parametrize("footer", ["", "EST5EDT,J60,J300", "nonsense 5"])
def test_a_footer_that_cannot_be_read_is_no_rule(footer):
    assert read_footer(footer) is None


def test_the_zones_own_file_is_read():
    assert zone_rule("Europe/London").summer_name == "BST"
    assert zone_rule("Europe/Paris").offset == HOUR


@pytest.mark.parametrize("key", ["Nowhere/Else", "Europe/Nowhere"])
def test_an_unknown_zone_is_refused(key):
    with pytest.raises(ZoneInfoNotFoundError):
        zone_rule(key)


def test_a_name_that_leads_out_of_the_folder_is_refused():
    with pytest.raises(ValueError, match="keys"):
        zone_rule("../etc/passwd")
