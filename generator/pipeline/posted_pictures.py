"""Pictures as they were when an issue was posted: kept once under their digest, and shown with that issue."""

import hashlib
from collections.abc import Iterable, Iterator, Mapping
from pathlib import PurePosixPath

from generator.checks.posting import issue_altered
from generator.model import Picture, Procedure, Step
from generator.model.located import Text
from generator.outputs.site import SiteFile
from generator.problems import Location, Problem
from generator.reading import Folder
from generator.study import Study
from generator.views.addresses import picture_path

# Below a lab's folder; the name of each file begins with the digest of its bytes.
KEPT = "posted/pictures"
_IN_SITE = "posted"
_LETTERS = 12
_BEGINNING = 1024


def picture_digest(data: bytes) -> str:
    """The short digest that an issue holds of a picture.

    A drawing is text whose line ends a version control system may change; that changes nothing that is seen.
    """
    text = b"\0" not in data[:_BEGINNING]
    return hashlib.sha256(data.replace(b"\r\n", b"\n") if text else data).hexdigest()[:_LETTERS]


def kept_name(file: str, digest: str) -> str:
    """The name under which a picture is kept for good: "0f3a…e1.svg"."""
    return f"{digest}{PurePosixPath(file).suffix.lower()}"


def pictures_to_keep(pictures: Mapping[str, str]) -> tuple[tuple[str, str], ...]:
    """For each picture of an issue its path below the lab's folder and the name to keep it under."""
    rows = pictures.items()
    return tuple((f"pictures/{file}", f"{KEPT}/{kept_name(file, digest)}") for file, digest in rows)


def as_posted(
    procedure: Procedure, posted: Mapping[str, str], live: Mapping[str, str], folder: Folder
) -> Procedure:
    """The procedure with its pictures of that day where today's are others; digests by file name.

    Where a picture was not kept its words remain, and no other picture stands beside them.
    """
    other = {file: digest for file, digest in posted.items() if live.get(file) != digest}
    moved = {file: _kept_path(folder, file, digest) for file, digest in other.items()}
    if not moved:
        return procedure
    stages = tuple(
        stage.model_copy(update={"steps": tuple(_with(step, moved) for step in stage.steps)})
        for stage in procedure.stages
    )
    return procedure.model_copy(update={"stages": stages})


def _kept_path(folder: Folder, file: str, digest: str) -> str:
    name = kept_name(file, digest)
    return f"{_IN_SITE}/{name}" if f"{KEPT}/{name}" in folder.kept_pictures else ""


def _with(step: Step, moved: Mapping[str, str]) -> Step:
    picture: Picture | None = step.picture
    if picture is None or str(picture.file) not in moved:
        return step
    file = Text(moved[str(picture.file)], picture.where)
    return step.model_copy(update={"picture": picture.model_copy(update={"file": file})})


def posted_picture_files(studies: Iterable[Study], folder: Folder) -> Iterator[SiteFile]:
    """The kept pictures that the shown procedures need."""
    wanted = {str(step.picture.file) for study in studies for step in study.procedure.steps if step.picture}
    for name in sorted(wanted):
        kept = f"{KEPT}/{name.removeprefix(f'{_IN_SITE}/')}"
        if name.startswith(f"{_IN_SITE}/") and kept in folder.kept_pictures:
            yield SiteFile(picture_path(name), (folder.path / kept).read_bytes())


def altered_pictures(folder: Folder) -> Iterator[Problem]:
    """A problem for each kept picture whose bytes are not those that its name tells."""
    for name in sorted(folder.kept_pictures):
        if not PurePosixPath(name).name.startswith(picture_digest((folder.path / name).read_bytes())):
            where = Location(f"{folder.shown}/{name}", 1, 1)
            yield issue_altered.at(where, "is not the picture that was posted")
