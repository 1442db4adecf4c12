"""One issue as a file: head, content and seal; written once, read by the reader of authors' files."""

import hashlib
import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

from generator.model import ID, ClassFile, Lab, LanguageFile, Located, Procedure, Text
from generator.model.posted import IssueHead, Withdrawal
from generator.notation import MapNode, as_yaml, plain, read_text
from generator.posting.content import Content
from generator.posting.plain import plain_noun
from generator.problems import Location
from generator.reading.fit import fit
from generator.reading.overlay import lay_over
from generator.reading.shape import shape_map

_SEAL = "# seal: "
_BODY = "\nlab:\n"
_PROCEDURE = re.compile(r"^procedure:\n(?:(?: .*)?\n)*", re.MULTILINE)


@dataclass(frozen=True)
class Issue:
    """What an issue says: its lab with only what it uses, its procedure, classes and translations."""

    head: IssueHead
    lab: Lab
    procedure: Procedure
    classes: Mapping[str, Procedure]
    class_files: Mapping[str, ClassFile]
    languages: Mapping[str, LanguageFile]
    content: Content


@dataclass(frozen=True, slots=True)
class IssueFile:
    """A file under `posted/`; `head` is None, or `sealed` false, where it is not as it was written."""

    file: str
    text: str
    head: IssueHead | None
    seal: str
    sealed: bool

    def read(self) -> Issue | None:
        """All that the issue says; None where it cannot be read."""
        return _read(self.file, self.text)

    def procedure(self) -> Procedure | None:
        """The procedure alone, which is a part of the file; None where the issue cannot be read.

        Only as it was written can the part be found without reading the rest.
        """
        if self.sealed:
            return _procedure(self.file, self.text)
        issue = self.read()
        return issue.procedure if issue else None


def write_issue(id: str, head: dict[str, Any], content: Content) -> str:
    """The text of an issue's file."""
    opening = (
        f"# Issue {head['number']} of {id}, as `newel post` wrote it. To change what is posted, post again.\n"
    )
    return sealed(opening + as_yaml({"issue": head, **content}))


def write_withdrawal(id: str, fields: dict[str, Any]) -> str:
    """The text of a withdrawal's file."""
    return sealed(
        f"# {id} is withdrawn. To bring it back, post it again.\n" + as_yaml({"withdrawal": fields})
    )


def sealed(text: str) -> str:
    """The text with a last line that a change by hand does not match."""
    return f"{text}{_SEAL}{_seal_of(text)}\n"


def _seal_of(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()[:32]


def open_issue(file: str, data: bytes) -> IssueFile:
    """Head and seal of an issue; the rest is read when it is asked for."""
    text, seal, good = _unsealed(data)
    head = _noun(IssueHead, file, text.partition(_BODY)[0] + "\n", "issue")
    return IssueFile(file, text, head, seal, good and head is not None)


def open_withdrawal(file: str, data: bytes) -> tuple[Withdrawal | None, bool]:
    """A withdrawal, and whether it is as it was written."""
    text, _, good = _unsealed(data)
    return _noun(Withdrawal, file, text, "withdrawal"), good


def _unsealed(data: bytes) -> tuple[str, str, bool]:
    # A version control system may have changed the line ends; that changes nothing that is said.
    text = data.decode("utf-8", "replace").replace("\r\n", "\n")
    body, mark, seal = text.rpartition(_SEAL)
    return (body, seal.strip(), _seal_of(body) == seal.strip()) if mark else (text, "", False)


@lru_cache(maxsize=64)
def _procedure(file: str, text: str) -> Procedure | None:
    part = _PROCEDURE.search(text)
    if part is None:
        return None
    # Empty lines in front keep every sentence on the line where it stands in the file.
    root = read_text(("\n" * text.count("\n", 0, part.start()) + part.group()).encode(), file).root
    inner = root.get("procedure") if isinstance(root, MapNode) else None
    id = Text(file.rsplit("/", 2)[-2], Location(file))
    return fit(Procedure, {**shape_map(inner), ID: id}, file)[0] if isinstance(inner, MapNode) else None


def _noun(noun: type[Located], file: str, text: str, key: str) -> Any:
    root = read_text(text.encode(), file).root
    inner = root.get(key) if isinstance(root, MapNode) else None
    return fit(noun, shape_map(inner), file)[0] if isinstance(inner, MapNode) else None


@lru_cache(maxsize=64)
def _read(file: str, text: str) -> Issue | None:
    root = read_text(text.encode(), file).root
    if not isinstance(root, MapNode) or not all(
        isinstance(root.get(key), MapNode) for key in ("issue", "lab", "procedure")
    ):
        return None
    parts = {str(key): value for key, value in root.items if isinstance(value, MapNode)}
    id = file.rsplit("/", 2)[-2]
    whole: dict[str, Any] = {**shape_map(parts["procedure"]), ID: Text(id, Location(file))}
    head, lab = fit(IssueHead, shape_map(parts["issue"]), file)[0], fit(Lab, shape_map(parts["lab"]), file)[0]
    procedure = fit(Procedure, dict(whole), file)[0]
    if head is None or lab is None or procedure is None:
        return None
    class_files, classes = _classes(id, whole, parts.get("classes"), file)
    languages = {
        str(key): found
        for key, value in (parts["languages"].items if "languages" in parts else ())
        if isinstance(value, MapNode) and (found := fit(LanguageFile, shape_map(value), file)[0])
    }
    content = _content(lab, procedure, class_files, parts)
    return Issue(head, lab, procedure, classes, class_files, languages, content)


def _classes(
    id: str, whole: dict[str, Any], node: MapNode | None, file: str
) -> tuple[dict[str, ClassFile], dict[str, Procedure]]:
    files: dict[str, ClassFile] = {}
    classes: dict[str, Procedure] = {}
    for key, value in node.items if node else ():
        if isinstance(value, MapNode):
            side = fit(ClassFile, shape_map(value), file)[0]
            merged, _ = lay_over({**whole, ID: Text(f"{id}.{key}", Location(file))}, shape_map(value))
            procedure = fit(Procedure, merged, file)[0]
            if side and procedure:
                files[str(key)], classes[str(key)] = side, procedure
    return files, classes


def _content(
    lab: Lab, procedure: Procedure, classes: Mapping[str, ClassFile], parts: Mapping[str, MapNode]
) -> Content:
    """Spelt as today's writer spells it, so that only what is said can differ."""
    nouns: dict[str, Any] = {"lab": plain_noun(lab.lab)}
    for key, value in parts["lab"].items:
        if isinstance(value, MapNode) and key != "lab" and hasattr(lab, key):
            nouns[str(key)] = {str(id): plain_noun(one) for id, one in getattr(lab, str(key)).items()}
    if lab.keep_apart:
        nouns["keep_apart"] = [plain_noun(row) for row in lab.keep_apart]
    content: Content = {"lab": nouns, "procedure": plain_noun(procedure)}
    if classes:
        content["classes"] = {tail: plain_noun(side) for tail, side in classes.items()}
    return content | {key: plain(parts[key]) for key in ("languages", "sums", "pictures") if key in parts}
