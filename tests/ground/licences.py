"""Every pinned package with its licence, a page of the docs: `python -m tests.ground.licences` writes it."""

import re
from importlib import metadata
from pathlib import Path

from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).parents[2]
PAGE = ROOT / "site_src" / "start" / "licences.md"
PINS = (("requirements.txt", "to use Newel"), ("requirements-dev.txt", "to work on it"),
        ("requirements-fuzz.txt", "to fuzz it"))  # fmt: skip
# What the metadata leaves out, read in the licence file that the package brings, and packages that are pinned
# for another system and not installed here, read in their own metadata.
ELSEWHERE = {
    "atheris": "Apache-2.0",
    "axe-playwright-python": "MIT",
    "brotlicffi": "MIT",
    "colorama": "BSD License",
}
HEAD = """# What Newel is built on

Every package that is pinned, with the licence that its own metadata names, and what it is for. Each is
pinned to one version by its hashes (`requirements.txt`, `requirements-dev.txt`, `requirements-fuzz.txt`), so
that nothing else can be installed in its place. Newel itself is under the MIT licence. The letters of its
pages and prints, IBM Plex, are under the SIL Open Font License; the GHS pictograms come with
`ghs-hazard-pictogram`.

A licence is told as the package tells it; nobody judged it. Known weaknesses are not looked up: without a
network there is no list of them younger than 2021. Ask one where there is a network:
`pip-audit -r requirements.txt`.

| Package | Version | Licence | For |
| --- | --- | --- | --- |
"""


def pinned() -> dict[str, tuple[str, str]]:
    """Version and use by name; the first file that pins a package says what it is for."""
    found: dict[str, tuple[str, str]] = {}
    for name, use in PINS:
        text = re.sub(r"#.*", "", (ROOT / name).read_text("utf-8")).replace("\\\n", " ")
        for line in filter(str.strip, text.splitlines()):
            want = Requirement(line.split("--hash")[0])
            version = next(iter(want.specifier)).version
            name = canonicalize_name(want.name)
            before = found.get(name)
            if before is None:
                found[name] = (version, use)
            elif version not in before[0]:
                found[name] = (f"{before[0]}, {version}", before[1])
    return found


def licence_of(name: str) -> str:
    """The licence by the package's own metadata: its expression, its classifiers, or its word."""
    try:
        about = metadata.metadata(name)
    except metadata.PackageNotFoundError:
        return ELSEWHERE.get(name, "")
    if "License-Expression" in about:
        return str(about["License-Expression"])
    marks = (mark for mark in about.get_all("Classifier") or () if mark.startswith("License ::"))
    classes = [mark.rpartition(" :: ")[2] for mark in marks]
    said = "".join(about.get_all("License") or ()).strip().splitlines()
    named = classes or [line for line in said[:1] if 1 < len(line) < 60]
    return " / ".join(each for each in named if each != "OSI Approved") or ELSEWHERE.get(name, "")


def page() -> str:
    """The page as it is to stand in the docs."""
    pins = sorted(pinned().items())
    rows = (f"| {name} | {version} | {licence_of(name)} | {use} |" for name, (version, use) in pins)
    return HEAD + "\n".join(rows) + "\n"


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
