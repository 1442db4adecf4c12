"""What the engine's own file says about addresses: where the site stands, where its files are edited."""

from pathlib import Path

import pytest

from generator.reading import edit_address, site_address


@pytest.fixture
def lab(tmp_path: Path) -> Path:
    (tmp_path / "procedures").mkdir()
    return tmp_path / "procedures"


def edited(lab: Path, settings: str, file: str = "etch it.yml") -> str:
    """Where line 7 of a file is edited, "" for nowhere."""
    (lab.parent / "mkdocs.yml").write_text(settings, "utf-8")
    found = edit_address(lab)
    return found.of(lab / file).replace("{line}", "7") if found else ""


FORGE = "https://forge.example/me/lab"


@pytest.mark.parametrize(
    ("settings", "wanted"),
    [
        ("site_name: x\n", ""),
        (f"repo_url: {FORGE}\n", ""),
        (
            "repo_url: https://github.com/me/lab/\n",
            "https://github.com/me/lab/edit/main/procedures/etch%20it.yml#L7",
        ),
        (
            "repo_url: https://gitlab.college.example/me/lab  # ours\n",
            "https://gitlab.college.example/me/lab/-/edit/main/procedures/etch%20it.yml#L7",
        ),
        (
            f"repo_url: '{FORGE}'\nedit_uri: _edit/main/pages/\ndocs_dir: pages\n",
            f"{FORGE}/_edit/main/procedures/etch%20it.yml#L7",
        ),
        (f"repo_url: {FORGE}\nedit_uri: _edit/main/\n", f"{FORGE}/_edit/main/procedures/etch%20it.yml#L7"),
        (f"edit_uri: {FORGE}/e/docs\n", f"{FORGE}/e/procedures/etch%20it.yml#L7"),
        (
            f'plugins:\n  - newel:\n      edit_link: "{FORGE}/{{path}}?at={{line}}"\n',
            f"{FORGE}/procedures/etch%20it.yml?at=7",
        ),
        ("plugins:\n  - newel:\n      edit_link: javascript:alert(1)//{path}\n", ""),
        ("repo_url: javascript:alert(1)\nedit_uri: edit/\n", ""),
        ('repo_url: !ENV [LAB_NOWHERE, ""]\nedit_uri: !ENV LAB_NOWHERE\n', ""),
        (
            'repo_url: !ENV [LAB_NOWHERE, LAB_REPO, ""]\nedit_uri: edit/\n',
            f"{FORGE}/edit/procedures/etch%20it.yml#L7",
        ),
    ],
)
def test_where_a_line_is_edited(
    lab: Path, monkeypatch: pytest.MonkeyPatch, settings: str, wanted: str
) -> None:
    monkeypatch.setenv("LAB_REPO", FORGE)
    assert edited(lab, settings) == wanted


def test_a_file_outside_the_folder_has_no_address(lab: Path) -> None:
    assert edited(lab, "repo_url: https://github.com/me/lab\n", "../../else.yml") == ""


def test_without_the_engines_file_nothing_is_known(lab: Path) -> None:
    assert edit_address(lab) is None
    assert site_address(lab) == ""


def test_the_sites_own_address(lab: Path) -> None:
    (lab.parent / "mkdocs.yml").write_text('site_url: "https://lab.example/x" # set it\n', "utf-8")
    assert site_address(lab) == "https://lab.example/x/"
