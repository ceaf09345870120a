"""What the phone keeps, read out of its database past the page: to be held against the server, and to wait for."""

from dataclasses import dataclass

from playwright.sync_api import Page

ROWS = """async ([name, fields]) => {
  const db = await new Promise((found, failed) => {
    const asked = indexedDB.open("trimops-crush");
    asked.onsuccess = () => found(asked.result);
    asked.onerror = () => failed(asked.error);
  });
  const rows = await new Promise((found) => {
    const asked = db.transaction(name).objectStore(name).getAll();
    asked.onsuccess = () => found(asked.result);
  });
  db.close();
  return Promise.all(rows.map(async (row) => {
    const part = Object.fromEntries(fields.map((field) => [field, row[field]]));
    if (!row.bytes) return part;
    const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", row.bytes));
    const sha256 = [...hash].map((byte) => byte.toString(16).padStart(2, "0")).join("");
    return { ...part, sha256, size: row.bytes.byteLength };
  }));
}"""


@dataclass(frozen=True)
class KeptPhoto:
    """A picture as it lies on the phone."""

    uid: str
    foot: str
    record: str
    size: int
    sha256: str


def kept(page: Page, store: str, *fields: str) -> list[dict]:
    """Those fields of every row of one of the phone's stores."""
    rows: list[dict] = page.evaluate(ROWS, [store, list(fields)])
    return rows


def waiting(page: Page) -> int:
    """How many writings and photos have not been answered for."""
    rows = [*kept(page, "writings", "state"), *kept(page, "photos", "state")]
    return sum(row["state"] == "waiting" for row in rows)


def kept_photos(page: Page) -> list[KeptPhoto]:
    pictures = {row["uid"]: row for row in kept(page, "pictures", "uid")}
    notes = kept(page, "photos", "uid", "foot", "record")
    return [
        KeptPhoto(**note, size=pictures[note["uid"]]["size"], sha256=pictures[note["uid"]]["sha256"])
        for note in notes
    ]
