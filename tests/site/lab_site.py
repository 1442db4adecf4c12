"""A lab's own site, published from its files: the pages that a test wants to look at."""

import datetime
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

from generator.checks import docs
from generator.outputs.assets import page_assets
from generator.outputs.javascript import formula_path, formulas_script
from generator.outputs.pages.lab_units import Told, back_units, front_units
from generator.outputs.pages.sheets import Chronicle, lay_out, procedure_sheets
from generator.outputs.site import Site, SiteFile
from generator.pipeline.check import Checked, check
from generator.publishing.publish import publish
from generator.reading import open_folder, read_lab
from generator.study import Study
from generator.sums import Known
from generator.views.addresses import day_plan_address
from generator.views.filling.class_day import class_days
from generator.views.filling.summary import summary_of

DAY = datetime.date(2026, 11, 25)


def write_lab_site(lab: Path, folder: Path, wanted: Callable[[str], bool]) -> tuple[Path, Checked]:
    """Publish the home page and the pages whose address is wanted; returns the site's folder and studies."""
    read = read_lab(open_folder(lab, lab.as_posix()))
    checked = check(read, DAY)
    assert checked.lab is not None
    known = Known(read.formulas.formulas)
    formulas = tuple(known.all())
    scripts = (SiteFile(formula_path(each.name), formulas_script((each,)).encode()) for each in formulas)
    folder_of = lab / "pictures"
    pictures = (
        SiteFile(f"pictures/{name}", (folder_of / name).read_bytes()) for name in read.folder.pictures
    )
    files = (*page_assets(), *scripts, *pictures)
    paths = frozenset(file.path for file in files)
    studies = tuple(checked.studies.values())
    told = Told(checked.lab, tuple(map(summary_of, studies)), formulas, docs(), files=paths)
    chronicle = Chronicle({formula.name: formula for formula in formulas}, paths)
    sheets = (
        *(sheet for unit in front_units(told) for sheet in unit.sheets(checked.lab)),
        *(sheet for study in studies for sheet in procedure_sheets(study, _told(study, chronicle, wanted))),
        *(sheet for unit in back_units(told) for sheet in unit.sheets(checked.lab)),
    )
    pages, _ = lay_out(sheets, paths)
    kept = tuple(page for page in pages if not page.address or wanted(page.address))
    publish(Site("Lab under test", kept, files, (), date=DAY.isoformat()), folder / "site")
    return folder / "site", checked


def _told(study: Study, chronicle: Chronicle, wanted: Callable[[str], bool]) -> Chronicle:
    """With the days of a class where their page is wanted."""
    days = class_days(study) if wanted(day_plan_address(study.procedure.id)) else ()
    return replace(chronicle, days=days)
