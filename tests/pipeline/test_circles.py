"""What a procedure's pages are made of goes without the collector of circles, which rests during a build."""

import datetime
import gc
from pathlib import Path

import pytest

import generator.pipeline.build
from generator.pipeline import build_site
from generator.pipeline.chapter import Chapter, write_chapter
from tests.many_labs import write_many

TODAY = datetime.date(2026, 11, 25)


def test_a_chapter_leaves_no_circles(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    left: list[int] = []

    def writing(*args: object, **more: object) -> Chapter:
        gc.collect()
        made = write_chapter(*args, **more)  # type: ignore[arg-type]
        left.append(gc.collect())
        return made

    monkeypatch.setattr(generator.pipeline.build, "write_chapter", writing)
    assert build_site(write_many(tmp_path, 3), TODAY, draft=True).site is not None
    assert left[1:] == [0, 0], "the first one loads templates and rules"
