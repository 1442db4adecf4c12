"""The store of printed sheets: the same bytes with it and without, and no harm from a spoilt one."""

import datetime
import sqlite3
from dataclasses import replace
from pathlib import Path

import pytest

import generator.pipeline.cards
import generator.pipeline.hazard_prints
from generator.outputs.page import whole_page
from generator.outputs.site import Site, SiteFile
from generator.pipeline import build_site
from generator.pipeline.kept import NOTHING_KEPT, Kept, kept_or_made, key_of
from generator.publishing.store import PressStore, code_version, open_store

LAB = Path(__file__).parents[1] / "labs" / "minimum"
TODAY = datetime.date(2026, 11, 25)
NAME = ".press.sqlite"


def built(kept: Kept = NOTHING_KEPT) -> Site:
    site = build_site(LAB, TODAY, draft=True, kept=kept).site
    assert site is not None
    files = tuple(SiteFile(file.path, file.content) for file in site.files)
    return replace(site, pages=tuple(map(whole_page, site.pages)), files=files)


def test_a_build_from_the_store_is_the_same_byte_for_byte(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    plain = built()
    with open_store(tmp_path) as kept:
        first = built(kept)

    def refuse(*_: object) -> bytes:
        raise AssertionError("printed although nothing has changed")

    for name in ("card_pdf", "card_svg", "fit"):
        monkeypatch.setattr(generator.pipeline.cards, name, refuse)
    monkeypatch.setattr("generator.outputs.press.template_door.print_template", refuse)
    monkeypatch.setattr("generator.outputs.press.hazard_documents.print_template", refuse)
    monkeypatch.setattr("generator.outputs.press.labels.print_template", refuse)
    with open_store(tmp_path) as kept:
        second = built(kept)
    assert plain == first == second
    printed = [file for file in plain.files if file.path.endswith(".pdf")]
    assert printed, "the lab prints something"


def test_what_was_put_in_comes_out_until_the_code_is_another(tmp_path: Path) -> None:
    path = tmp_path / NAME
    store = PressStore(path, "one")
    assert store.get("a") is None
    assert not path.exists(), "looking makes no file"
    store.put("a", b"\0sheet")
    store.close()
    assert PressStore(path, "one").get("a") == b"\0sheet"
    assert PressStore(path, "two").get("a") is None
    assert code_version() == code_version() != ""


@pytest.mark.parametrize("spoilt", [b"no database at all" * 100, b"SQLite format 3\0" + b"\xff" * 5000])
def test_a_spoilt_file_is_begun_anew(tmp_path: Path, spoilt: bytes) -> None:
    path = tmp_path / NAME
    path.write_bytes(spoilt)
    store = PressStore(path, "one")
    assert store.get("a") is None
    store.put("a", b"sheet")
    assert store.get("a") == b"sheet"
    store.close()
    assert PressStore(path, "one").get("a") == b"sheet"


def test_a_row_that_was_changed_is_taken_for_none(tmp_path: Path) -> None:
    path = tmp_path / NAME
    store = PressStore(path, "one")
    store.put("a", b"sheet")
    store.close()
    connection = sqlite3.connect(path)
    with connection:
        connection.execute("UPDATE printed SET content = ?", (b"another",))
    connection.close()
    assert PressStore(path, "one").get("a") is None


def test_a_store_that_cannot_be_written_costs_nothing_but_time(tmp_path: Path) -> None:
    (tmp_path / "state").write_text("a file where the folder should be")
    with open_store(tmp_path / "state") as store:
        store.put("a", b"sheet")
        assert store.get("a") == b"sheet", "it is there as long as the store is"
        assert kept_or_made(store, "b", lambda: b"made") == b"made"
    with open_store(tmp_path / "state") as store:
        assert store.get("a") is None


def test_many_rows_are_written_while_more_are_put_in_and_the_rest_at_the_end(tmp_path: Path) -> None:
    path = tmp_path / NAME
    store, another = PressStore(path, "one"), PressStore(path, "one")
    texts = {f"row {number}": b"%d" % number for number in range(250)}
    for key, content in texts.items():
        assert store.put(key, content)
    assert another.get("row 0") == b"0", "those before the last are in the file"
    assert another.get("row 249") is None
    another.close()
    assert {key: store.get(key) for key in texts} == texts
    store.close()
    again = PressStore(path, "one")
    assert {key: again.get(key) for key in texts} == texts
    again.close()


def test_rows_that_another_build_keeps_out_of_the_file_stay_at_hand(tmp_path: Path) -> None:
    path = tmp_path / NAME
    first = PressStore(path, "one")
    first.put("first", b"sheet")
    first.close()
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("BEGIN EXCLUSIVE")
    store = PressStore(path, "one")
    for number in range(100):
        store.put(str(number), b"%d" % number)
    assert [store.get(str(number)) for number in (0, 99)] == [b"0", b"99"]
    other.execute("ROLLBACK")
    other.close()
    assert store.get("first") == b"sheet"
    store.close()


def test_only_what_shows_itself_whole_has_a_key() -> None:
    assert key_of("card", ("a", 1.5)) != key_of("card", ("a", 1.25))
    assert key_of("card", ("a",)) != key_of("sheet", ("a",))
    assert key_of("card", object()) == ""
