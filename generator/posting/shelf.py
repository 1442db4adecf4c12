"""All that is posted: issues by procedure, withdrawals, the register of copies, altered files."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from generator.model import Procedure
from generator.model.posted import CopyRegister, IssueHead, Withdrawal
from generator.notation import MapNode, read_text
from generator.posting.issue import IssueFile, open_issue, open_withdrawal
from generator.problems import Problem
from generator.reading.fit import fit
from generator.reading.shape import shape_map

_FILE = re.compile(r"posted/(?P<id>[a-z0-9-]+)/(?P<number>\d{1,5})(?P<gone>\.withdrawn)?\.yml")
COPIES = "posted/copies.yml"


@dataclass(frozen=True, slots=True)
class Altered:
    """A file of the shelf that is not as it was written, and what is wrong with it."""

    file: str
    what: str


@dataclass(frozen=True)
class Shelf:
    """Issues by procedure, oldest first; withdrawals by procedure and issue; the register of copies."""

    issues: Mapping[str, tuple[IssueFile, ...]] = field(default_factory=dict)
    withdrawals: Mapping[tuple[str, int], Withdrawal] = field(default_factory=dict)
    register: CopyRegister = field(default_factory=CopyRegister)
    register_file: str = COPIES
    altered: tuple[Altered, ...] = ()
    problems: tuple[Problem, ...] = ()

    def last(self, id: str) -> IssueFile | None:
        """The newest issue of a procedure that can be read."""
        return next((found for found in reversed(self.issues.get(id, ())) if found.head), None)

    def head(self, id: str) -> IssueHead | None:
        """The head of the newest issue."""
        found = self.last(id)
        return found.head if found else None

    def withdrawn(self, id: str) -> Withdrawal | None:
        """Since when and why the newest issue is withdrawn, None where it stands."""
        head = self.head(id)
        return self.withdrawals.get((id, head.number)) if head else None

    def only(self, id: str) -> "Shelf":
        """What is posted of one procedure, and nothing of the lab."""
        gone = {key: one for key, one in self.withdrawals.items() if key[0] == id}
        return Shelf({id: self.issues[id]} if id in self.issues else {}, gone)

    def issue(self, id: str, number: int) -> IssueFile | None:
        """One issue by its number."""
        return next((one for one in self.issues.get(id, ()) if one.head and one.head.number == number), None)


class Posted(Mapping[str, Procedure]):
    """The procedures of a row of issues by number; each is read when it is first asked for."""

    def __init__(self, files: tuple[IssueFile, ...]) -> None:
        self._files = {str(file.head.number): file for file in files if file.head}

    def __getitem__(self, number: str) -> Procedure:
        procedure = self._files[number].procedure()
        if procedure is None:
            raise KeyError(number)
        return procedure

    def __iter__(self) -> Iterator[str]:
        return iter(self._files)

    def __len__(self) -> int:
        return len(self._files)


def open_shelf(files: Mapping[str, bytes], shown: str) -> Shelf:
    """The shelf of a folder; `files` are the bytes under `posted/` by the name shown."""
    rows: dict[str, dict[int, IssueFile]] = {}
    withdrawals: dict[tuple[str, int], Withdrawal] = {}
    altered: list[Altered] = []
    for name, data in files.items():
        named = _FILE.fullmatch(name.removeprefix(f"{shown}/"))
        if not named:
            continue
        id, number = named["id"], int(named["number"])
        if named["gone"]:
            found, good = open_withdrawal(name, data)
            if found:
                withdrawals[id, number] = found
            altered += [] if good and found else [Altered(name, "is not as `newel withdraw` wrote it")]
        else:
            rows.setdefault(id, {})[number] = open_issue(name, data)
    issues = {id: tuple(row[number] for number in sorted(row)) for id, row in rows.items()}
    altered += [fault for id, row in rows.items() for fault in _faults(id, row)]
    register_file = f"{shown}/{COPIES}"
    register, problems = _register(register_file, files.get(register_file, b""))
    altered += _gone(rows, withdrawals, register, shown)
    return Shelf(issues, withdrawals, register, register_file, tuple(altered), problems)


def _faults(id: str, row: Mapping[int, IssueFile]) -> Iterator[Altered]:
    """Issues that were altered, are missing, or do not follow the one before."""
    for number in range(1, max(row) + 1):
        issue, before = row.get(number), row.get(number - 1)
        if issue is None:
            yield Altered(row[max(row)].file, f"stands there, but issue {number} of {id} is gone")
        elif not issue.sealed or issue.head is None or issue.head.number != number:
            yield Altered(issue.file, "is not as `newel post` wrote it")
        elif before and before.sealed and issue.head.before != before.seal:
            yield Altered(issue.file, f"does not follow the issue {number - 1} that lies beside it")


def _gone(
    rows: Mapping[str, Mapping[int, IssueFile]],
    withdrawals: Mapping[tuple[str, int], Withdrawal],
    register: CopyRegister,
    shown: str,
) -> Iterator[Altered]:
    """Newest issues that are gone: a withdrawal or a laminated copy still names them."""
    for id, number in withdrawals:
        if number not in rows.get(id, {}):
            name = f"{shown}/posted/{id}/{number}.withdrawn.yml"
            yield Altered(name, f"withdraws issue {number} of {id}, which is gone")
    told: set[tuple[str, int]] = set()
    for copy in register.copies:
        id = str(copy.card).partition("/")[0].partition(".")[0]
        if copy.issue not in rows.get(id, {}) and (id, copy.issue) not in told:
            told.add((id, copy.issue))
            yield Altered(f"{shown}/{COPIES}", f"names issue {copy.issue} of {id}, which is gone")


def _register(file: str, data: bytes) -> tuple[CopyRegister, tuple[Problem, ...]]:
    if not data.strip():
        return CopyRegister(), ()
    document = read_text(data, file)
    if not isinstance(document.root, MapNode):
        return CopyRegister(), document.problems
    register, problems = fit(CopyRegister, shape_map(document.root), file)
    return register or CopyRegister(), (*document.problems, *problems)
