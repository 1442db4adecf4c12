"""The files of a site that are what they are: scripts and styles, the lab's pictures, its formulas."""

from collections.abc import Iterator
from functools import partial

from generator.formulas import Formula
from generator.outputs.assets import page_assets
from generator.outputs.javascript import formula_path, formulas_script
from generator.outputs.site import AnyFile, KeptFile, SiteFile
from generator.pipeline.chapter import Wanted
from generator.pipeline.kept import plain_key
from generator.reading import LabRead
from generator.views.addresses import picture_path


def given_files(wanted: Wanted) -> tuple[AnyFile, ...]:
    """Of every site of this lab, whatever its procedures say."""
    return (*page_assets(), *_pictures(wanted.nouns), *_formulas(wanted))


def _pictures(read: LabRead) -> Iterator[SiteFile]:
    folder = read.folder.path / "pictures"
    for name in sorted(read.folder.pictures):
        yield SiteFile(picture_path(name), (folder / name).read_bytes())


def _formulas(wanted: Wanted) -> Iterator[KeptFile]:
    """The script of each formula, made when it is asked for: a preview mostly asks for none."""
    for each in wanted.formulas.values():
        key = plain_key("formula", wanted.base, each.name)
        yield KeptFile(formula_path(each.name), key, partial(_script, each))


def _script(formula: Formula) -> bytes:
    return formulas_script((formula,)).encode()
