"""A build that is measured begins afresh, and nothing is removed for it."""

from pathlib import Path

from bench.building import set_aside


def test_what_was_built_is_moved_away_and_stays_whole(tmp_path: Path) -> None:
    lab = tmp_path / "lab"
    for turn in range(2):
        (lab / "site").mkdir(parents=True)
        (lab / "site" / "index.html").write_text(str(turn), encoding="utf-8")
        (lab / "procedures").mkdir(exist_ok=True)
        set_aside(lab)
        assert [path.name for path in lab.iterdir()] == ["procedures"]
    kept = sorted(path.read_text(encoding="utf-8") for path in tmp_path.rglob("index.html"))
    assert kept == ["0", "1"]


def test_a_folder_in_which_nothing_was_built_stays_as_it_is(tmp_path: Path) -> None:
    set_aside(tmp_path / "lab", tmp_path)
    assert not list(tmp_path.iterdir())
