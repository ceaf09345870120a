"""What the phone keeps, and when it says that it has kept it."""

import pytest
from playwright.sync_api import Error, Page

from tests.browser.conftest import Site
from tests.browser.crush_harness import CrushDay, add, call, cow_writing, fetch_and_sit, kept, make_crush_day
from tests.factories import make_member
from trimops.accounts.roles import Role

pytestmark = pytest.mark.xdist_group("browser")
# A page of ours that has nothing to do with the crush.
ELSEWHERE = "/farms/"
SPY = """() => {
  const plain = IDBDatabase.prototype.transaction;
  window.opened = [];
  IDBDatabase.prototype.transaction = function (stores, mode, options) {
    const made = plain.call(this, stores, mode, options);
    const seen = {stores: [...stores], mode, durability: made.durability, isDone: false};
    made.addEventListener("complete", () => { seen.isDone = true; });
    window.opened.push(seen);
    return made;
  };
}"""


# As a full disk does it: everything was taken, and then the transaction is given up.
FAILS = """() => {
  const plain = IDBObjectStore.prototype.add;
  IDBObjectStore.prototype.add = function (...row) {
    const request = plain.apply(this, row);
    request.addEventListener("success", () => this.transaction.abort());
    return request;
  };
}"""


@pytest.fixture
def day(transactional_db) -> CrushDay:
    return make_crush_day()


@pytest.fixture
def page(day: CrushDay, door: Site) -> Page:
    """Signed in as the trimmer, the papers fetched and the page seated."""
    sit(door, day, day.house.trimmer)
    return door.page


def sit(door: Site, day: CrushDay, user) -> None:
    door.page.context.clear_cookies()
    door.be(user)
    door.open(ELSEWHERE)
    fetch_and_sit(door.page, day)


def test_the_papers_are_kept_with_the_phones_own_settings(day, page):
    page.reload()
    there = kept(page, day)

    assert there["papers"]["farm"]["name"] == "Low Croft"
    assert [cow["number"] for cow in there["papers"]["cows"]] == ["101", "201", "202", "203"]
    assert (there["writings"], there["drafts"], there["photos"]) == ([], {}, [])
    assert there["phone"]["begun"] is None
    assert there["phone"]["is_quiet"] is True
    assert len(there["phone"]["id"]) == 36
    call(page, "store.js", "putPhone", {"is_quiet": False})
    assert kept(page, day)["phone"] == {**there["phone"], "is_quiet": False}


def test_the_browser_is_asked_once_to_keep_it_all_even_when_the_phone_is_full(day, page, door):
    page.evaluate(
        """async () => {
          const { deleteDB } = await import("/static/trimops/lib/idb.js");
          await deleteDB("trimops-crush");
          window.asked = 0;
          navigator.storage.persist = async () => { window.asked += 1; return true; };
        }"""
    )
    for _ in range(2):
        fetch_and_sit(page, day)
    assert page.evaluate("window.asked") == 1
    assert kept(page, day)["papers"] is not None, "and a database that was cleared away is simply made again"


def test_a_writing_takes_the_cows_draft_along_and_knows_the_servers_last_hour(day, page):
    now = kept(page, day)["papers"]["fetched_at"]
    for cow in ("c1", "c2"):
        call(page, "store.js", "putDraft", day.visit.pk, cow, {"half": cow})

    made = add(page, day, 1)

    page.reload()
    there = kept(page, day)
    assert there["drafts"] == {"c2": {"half": "c2"}}
    assert there["writings"] == [made]
    assert (made["state"], made["not_before"], made["seq"]) == ("waiting", now, 1)
    assert made["content"] == cow_writing(day, 1)["content"]


def test_a_draft_that_came_before_the_writing_never_comes_back_after_it(day, page):
    """The taps of a quick thumb are not waited for one by one."""
    page.evaluate(
        """async ([module, made]) => {
          const store = await import(module);
          const taps = [1, 2, 3].map((tap) => store.putDraft(made.visit, made.cowKey, {tap}));
          await Promise.all([...taps, store.addWriting(made)]);
        }""",
        ["/static/visits/crush/store.js", cow_writing(day, 1)],
    )
    assert kept(page, day)["drafts"] == {}


@pytest.mark.parametrize(
    ("name", "given"),
    [
        ("putDraft", lambda day: (day.visit.pk, "c1", {"half": 1})),
        ("addWriting", lambda day: (cow_writing(day, 1),)),
        ("putBegun", lambda day: (day.visit.pk, {"at": "2026-03-02T08:00:00Z", "checked": True})),
        ("putPhone", lambda day: ({"is_still": True},)),
    ],
)
def test_nothing_is_said_to_be_kept_before_it_is_on_the_disk(name, given, day, page):
    page.evaluate(SPY)
    call(page, "store.js", name, *given(day))

    written = [each for each in page.evaluate("window.opened") if each["mode"] == "readwrite"]
    assert written
    assert all(each["durability"] == "strict" and each["isDone"] for each in written)


def test_what_the_disk_does_not_take_is_said_and_nothing_of_it_is_kept(day, page):
    made = add(page, day, 1)
    call(page, "store.js", "putDraft", day.visit.pk, "c1", {"half": 1})
    page.evaluate(FAILS)
    with pytest.raises(Error, match="abort"):
        add(page, day, 1, after=made["uid"])

    page.reload()
    there = kept(page, day)
    assert [each["uid"] for each in there["writings"]] == [made["uid"]]
    assert there["drafts"] == {"c1": {"half": 1}}


def test_the_start_of_the_visit_is_kept_per_visit_and_survives_new_papers(day, page):
    begun = {"at": "2026-03-02T08:00:00Z", "checked": True}
    call(page, "store.js", "putBegun", day.visit.pk, begun)
    call(page, "papers.js", "fetchPapers", day.visit.pk)

    assert kept(page, day)["phone"]["begun"] == begun
    assert call(page, "store.js", "countWaiting", day.visit.pk)["begun"] == 1
    assert call(page, "store.js", "loadVisit", day.visit.pk + 1)["phone"]["begun"] is None


def test_what_waits_is_counted_in_writings_cows_and_photos(day, page):
    first = add(page, day, 1)
    add(page, day, 1, after=first["uid"])
    add(page, day, 2)
    call(page, "store.js", "putDraft", day.visit.pk, "c3", {"half": 1})
    note = add_photo(page, day)

    counted = {"waiting": 4, "refused": 0, "cows": 2, "photos": 1, "begun": 0}
    assert call(page, "store.js", "countWaiting", day.visit.pk) == counted
    assert call(page, "store.js", "countWaiting") == counted
    (first_day,) = call(page, "store.js", "daysKept")
    assert (first_day["visit"], first_day["farm"], first_day["waiting"]) == (day.visit.pk, "Low Croft", 4)
    assert call(page, "store.js", "dropPhoto", note["uid"]) is True
    assert call(page, "store.js", "countWaiting")["photos"] == 0


def add_photo(page: Page, day: CrushDay) -> dict:
    return page.evaluate(
        """async (visit) => {
          const { addPhoto } = await import("/static/visits/crush/store.js");
          const blob = new Blob([new Uint8Array([255, 216, 255, 217])]);
          return addPhoto({ visit, record: "0190aaaa-0000-7000-8000-000000000001", foot: "LH", blob });
        }""",
        day.visit.pk,
    )


def test_a_photo_comes_back_byte_by_byte_and_a_dropped_one_leaves_nothing(day, page):
    note = add_photo(page, day)
    page.reload()
    read = (
        "async (uid) => { const blob = await (await import('/static/visits/crush/store.js')).pictureOf(uid);"
    )
    read += "return blob && [blob.type, ...new Uint8Array(await blob.arrayBuffer())]; }"

    assert page.evaluate(read, note["uid"]) == ["image/jpeg", 255, 216, 255, 217]
    assert kept(page, day)["photos"] == [note]
    call(page, "store.js", "dropPhoto", note["uid"])
    assert page.evaluate(read, note["uid"]) is None


def test_a_day_goes_from_the_phone_only_when_nothing_of_it_waits(day, page):
    made = add(page, day, 1)
    assert call(page, "store.js", "forgetDay", day.visit.pk) == {
        "isGone": False,
        "waiting": 1,
        "refused": 0,
        "drafts": 0,
    }
    assert kept(page, day)["writings"] == [made]
    call(page, "store_answers.js", "markRefused", "writings", made["uid"], [{"field": "x", "reason": "y"}])
    assert call(page, "store.js", "forgetDay", day.visit.pk) == {
        "isGone": False,
        "waiting": 0,
        "refused": 1,
        "drafts": 0,
    }
    assert call(page, "store.js", "dropRefused", made["uid"]) is True

    assert call(page, "store.js", "forgetDay", day.visit.pk)["isGone"] is True
    assert kept(page, day)["papers"] is None
    assert call(page, "store.js", "daysKept") == []


def test_only_what_was_refused_can_be_dropped_and_mending_drops_it_in_one_go(day, page):
    made = add(page, day, 1)
    assert call(page, "store.js", "dropRefused", made["uid"]) is False
    call(page, "store_answers.js", "markRefused", "writings", made["uid"], [{"field": "x", "reason": "y"}])
    mended = add(page, day, 1, mends=made["uid"])

    assert [each["uid"] for each in kept(page, day)["writings"]] == [mended["uid"]]


def test_days_long_past_leave_by_themselves_but_never_with_something_that_waits(day, page):
    later = "async (ms) => (await import('/static/visits/crush/store_counts.js')).tidy(Date.now() + ms)"
    fifteen_days = 15 * 86_400_000
    made = add(page, day, 1)
    page.evaluate(later, fifteen_days)
    assert kept(page, day)["writings"] == [made]
    call(page, "store_answers.js", "markSent", "writings", made["uid"])
    page.evaluate(later, fifteen_days - 3 * 86_400_000)
    assert kept(page, day)["papers"] is not None
    page.evaluate(later, fifteen_days + 86_400_000)
    assert kept(page, day)["papers"] is None


def test_what_one_person_wrote_is_not_shown_under_anothers_name_and_is_there_when_they_come_back(
    day, page, door
):
    made = add(page, day, 1)
    colleague = make_member(day.house.business, Role.TRIMMER).user
    sit(door, day, colleague)
    assert kept(page, day)["writings"] == []
    assert call(page, "store.js", "countWaiting")["waiting"] == 0
    theirs = add(page, day, 2)
    assert [each["uid"] for each in kept(page, day)["writings"]] == [theirs["uid"]]

    sit(door, day, day.house.trimmer)
    assert kept(page, day)["writings"] == [made]


def test_a_page_that_is_open_stays_with_its_person_until_it_loads_again(day, page, door):
    other = make_member(day.house.business, Role.TRIMMER).user
    tab = page.context.new_page()
    page.context.clear_cookies()
    door.be(other)
    tab.goto(door.address + ELSEWHERE)
    call(tab, "papers.js", "fetchPapers", day.visit.pk)
    made = add(page, day, 1)

    call(tab, "store.js", "loadVisit", day.visit.pk)
    assert call(tab, "store.js", "countWaiting")["waiting"] == 0
    assert call(page, "store.js", "countWaiting")["waiting"] == 1
    assert made["key"] == f"{day.house.business.pk}:{day.house.trimmer.pk}/{day.visit.pk}"


def test_other_tabs_are_told_of_what_was_kept(day, page, door):
    tab = page.context.new_page()
    tab.goto(door.address + ELSEWHERE)
    tab.evaluate(
        "import('/static/visits/crush/store.js').then((it) => it.onChange((news) => { window.heard = news; }))"
    )
    add(page, day, 1)
    tab.wait_for_function("() => window.heard")
    assert tab.evaluate("window.heard") == {"what": "written", "isHere": False}
