"""Reads `.cases` files: plain text that a person of the trade can read and add to.

A case is `== title`, then sections that start with `--- name`:
  lab, procedure   YAML laid over the files in tests/checks/base (`~` takes a field away, lists replace)
  steps            the steps of the only stage
  edit             one line an edit of base steps: `drop ID`, `move ID after ID`, `change ID {field: value}`,
                   `after ID {id: ..., do: ...}`, `before ID {...}`, `fill ID N` (N idle steps behind it);
                   `~` as a value takes a field away
  file NAME        a whole file of the folder, raw: `file procedures/x.yml`; replaces a base file of that name
  latin-1 NAME     the same, saved in an encoding that is not UTF-8
  posted           YAML: the base was posted as issue 1 `on` a day, with `lab` and `procedure` laid over it;
                   `with: [[old, new]]` changes the issue before it is sealed, `altered: [[old, new]]` after
  today            the day, default 2026-11-25
  found            one line a problem of the rule under test: `level @step  part of the message`, or `nothing`
"""

import datetime
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from generator.notation import as_yaml, plain, read_text
from generator.pipeline import Checked, check
from generator.pipeline.build import Outcome, build_folder
from generator.pipeline.posting import Ready, Wish, post
from generator.posting.issue import sealed
from generator.reading import open_folder, read_lab

BASE = Path(__file__).parent / "base"
_PRESS = ("card-too-small", "card-drops-hazard")
_SAVED_AS = {"file": "utf-8", "latin-1": "latin-1"}


@dataclass(frozen=True)
class Case:
    """One case of a rule."""

    rule: str
    title: str
    sections: dict[str, str]
    files: dict[str, bytes] = field(default_factory=dict)

    @property
    def expected(self) -> list[tuple[str, str, str]]:
        """(level, step, part of the message) by line; empty for `nothing`."""
        lines = [line.strip() for line in self.sections["found"].splitlines() if line.strip()]
        return [] if lines == ["nothing"] else [_expected(line) for line in lines]


def _expected(line: str) -> tuple[str, str, str]:
    level, _, rest = line.partition(" ")
    rest = rest.strip()
    if not rest.startswith("@"):
        return level, "", rest
    step, _, message = rest[1:].partition(" ")
    return level, step, message.strip()


def read_cases(path: Path) -> list[Case]:
    """All cases of a file; the file's name is the rule's id."""
    cases = []
    for block in path.read_text(encoding="utf-8").split("\n== ")[
        0 if path.read_text().startswith("== ") else 1 :
    ]:
        title, _, rest = block.removeprefix("== ").partition("\n")
        sections: dict[str, str] = {}
        files: dict[str, bytes] = {}
        for part in ("\n" + rest).split("\n--- ")[1:]:
            name, _, body = part.partition("\n")
            kind, _, file = name.strip().partition(" ")
            if kind in _SAVED_AS:
                files[file] = (body + "\n").encode(_SAVED_AS[kind])
            else:
                sections[name.strip()] = body + "\n"
        cases.append(Case(path.stem.replace("_", "-"), title.strip(), sections, files))
    return cases


def lay_over(base: Any, patch: Any) -> Any:
    """Mappings merged key by key; `~` deletes; anything else replaces."""
    if not isinstance(base, dict) or not isinstance(patch, dict):
        return patch
    out = dict(base)
    for key, value in patch.items():
        if value == "~":
            out.pop(key, None)
        else:
            out[key] = lay_over(out.get(key), value)
    return out


def _yaml(text: str) -> Any:
    root = read_text(text.encode(), "case.yml").root
    assert root is not None, text
    return plain(root)


def edit_steps(steps: list[dict[str, Any]], edits: str) -> None:
    """Carry out edits on a list of steps."""
    for line in filter(None, map(str.strip, edits.splitlines())):
        verb, id, *rest = line.split(None, 2)
        at = next(index for index, step in enumerate(steps) if step["id"] == id)
        if verb == "drop":
            del steps[at]
        elif verb == "change":
            steps[at] = lay_over(steps[at], _yaml(rest[0]))
        elif verb == "fill":
            steps[at + 1 : at + 1] = [
                {"id": f"idle-{n}", "do": "act", "say": "Wait."} for n in range(int(rest[0]))
            ]
        elif verb == "move":
            step = steps.pop(at)
            side, target = rest[0].split()
            steps.insert([s["id"] for s in steps].index(target) + (side == "after"), step)
        else:
            steps.insert(at + (verb == "after"), _yaml(rest[0]))


def write_lab(case: Case, folder: Path) -> None:
    """The case as a lab's folder."""
    lab = lay_over(_yaml((BASE / "lab.yml").read_text()), _yaml(case.sections.get("lab", "{}")))
    procedure = lay_over(
        _yaml((BASE / "procedure.yml").read_text()), _yaml(case.sections.get("procedure", "{}"))
    )
    if "steps" in case.sections:
        procedure["stages"][0]["steps"] = _yaml(case.sections["steps"])
    edit_steps(procedure["stages"][0]["steps"], case.sections.get("edit", ""))
    folder.mkdir(parents=True)
    if "posted" in case.sections:
        write_posted(_yaml(case.sections["posted"]), folder)
    (folder / "lab.yml").write_text(as_yaml(lab))
    (folder / "clean-a-plate.yml").write_text(as_yaml(procedure))
    for name, text in case.files.items():
        target = folder / name.removeprefix("procedures/")
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(text)


def write_posted(posted: dict[str, Any], folder: Path) -> None:
    """Issue 1 of the base, as posted on a day; the author's files are left for others to write."""
    roles = {"roles": {"safety-office": {"title": "Safety office"}}}
    lab = lay_over(lay_over(_yaml((BASE / "lab.yml").read_text()), roles), posted.get("lab", {}))
    procedure = lay_over(_yaml((BASE / "procedure.yml").read_text()), posted.get("procedure", {}))
    (folder / "lab.yml").write_text(as_yaml(lab))
    (folder / "clean-a-plate.yml").write_text(as_yaml(procedure))
    read = read_lab(open_folder(folder, "procedures"))
    checked = check(read, datetime.date.fromisoformat(posted["on"]))
    ready = post(read, checked, "clean-a-plate", Wish("First issue", "instructor", "safety-office"))
    assert isinstance(ready, Ready), ready
    text = sealed(_changed(ready.text.rpartition("# seal: ")[0], posted.get("with", [])))
    target = folder / ready.file
    target.parent.mkdir(parents=True)
    target.write_text(_changed(text, posted.get("altered", [])))


def _changed(text: str, pairs: list[list[str]]) -> str:
    for old, new in pairs:
        assert old in text, old
        text = text.replace(old, new, 1)
    return text


def check_case(case: Case, folder: Path) -> Checked | Outcome:
    """Everything that is found in a case; cards are set in type only for the rules that the press finds."""
    write_lab(case, folder)
    today = datetime.date.fromisoformat(case.sections.get("today", "2026-11-25").strip())
    read = read_lab(open_folder(folder, "procedures"))
    if case.rule in _PRESS:
        return build_folder(read.folder, today, draft=True, site_url="https://example.org/")
    return check(read, today)
