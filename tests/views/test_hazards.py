"""Hazard pages of the demo lab: in the order of a supplier's sheet, honest about what is missing."""

import datetime
from functools import cache
from pathlib import Path

import pytest

from generator.hazards import screen
from generator.pipeline import Checked, check
from generator.reading import open_folder, read_lab
from generator.study import Study
from generator.study.composition import composition_of
from generator.views.chemical import ChemicalView, HazardHeadingView
from generator.views.filling.chemical import CAUTION, mixture_view, substance_view
from generator.views.filling.container_labels import chemical_label, waste_labels
from generator.views.filling.hazards import hazards_view
from generator.views.filling.inventory import in_baths
from generator.views.filling.lab_hazards import lab_hazards_view
from generator.views.filling.office import office_view
from generator.views.filling.reactivity import BLANK
from generator.views.filling.sheets_held import age_words
from generator.views.lab_hazards import TableView
from tests.cli.running import make_lab

DEMO = Path(__file__).parents[2] / "procedures"
TODAY = datetime.date(2026, 11, 25)
NOVEMBER = "2 November 2025".replace(" ", "\u00a0")
ORDER = (
    "Name and sheet", "Made of", "First action", "Fire", "Spill", "Handling", "Storage", "Worn here",
    "Measured", "Never mix with", "What it does", "Waste", "Transport and law",
)  # fmt: skip


@cache
def demo() -> Checked:
    return check(read_lab(open_folder(DEMO, "procedures")), TODAY)


def copper_run() -> Study:
    return demo().studies["copper-the-holes"]


def mixture(id: str) -> ChemicalView:
    lab = demo().lab
    assert lab is not None
    composition = composition_of(lab.lab, id)
    return mixture_view(lab, id, (), screen(composition) if composition else None)


def said(view: ChemicalView, title: str) -> str:
    heading = next(one for one in view.headings if one.title == title)
    return " | ".join(f"{line.label}: {line.text}" for line in heading.lines)


def table(anchor: str) -> TableView:
    lab = demo().lab
    assert lab is not None
    return next(one for one in lab_hazards_view(lab).tables if one.anchor == anchor)


def test_headings_follow_the_supplier_s_sheet() -> None:
    """The order of the 16 headings: 29 CFR 1910.1200 App. D, as training slides quote it."""
    view = mixture("etch-mix")
    assert tuple(one.title for one in view.headings) == ORDER
    numbers = [int(one.sheet.split(",")[0]) for one in view.headings]
    assert numbers == sorted(numbers)
    covered = {int(n) for one in view.headings for n in one.sheet.split(",")}
    # 2 is the label itself; 16 is the sheet's own remarks.
    assert covered | {2, 16} == set(range(1, 17))


def test_what_the_etch_bath_says() -> None:
    view = mixture("etch-mix")
    assert view.label.signal == "Danger"
    assert [one.code for one in view.label.statements] == ["H314", "H317", "H334", "H410"]
    assert f"yellow binder tab 6, dated {NOVEMBER} (1 year old)" in said(view, "Name and sheet")
    assert "Bath keeper: room B12 or extension 417" in said(view, "Name and sheet")
    assert "Lungs: extraction at the place (asked for by H334)" in said(view, "Worn here")
    assert "propan-2-ol: heat generation, fire" in said(view, "Never mix with")
    assert "Long after: nothing is declared" in said(view, "What it does")
    assert "Etch drum" in said(view, "Waste")
    # It gives off gas: never the advice to close tightly, though H334 brings P233.
    everything = " ".join(said(view, title) for title in ORDER)
    assert "P233" not in everything and "never sealed" in everything
    assert "P233" not in " ".join(one.code for one in view.label.precautions)


def test_what_eats_metal_is_not_said_to_be_a_fire() -> None:
    lab = demo().lab
    assert lab is not None
    acid = substance_view(lab, "sulfuric-acid-96")
    assert "H290" not in said(acid, "Fire") and "That does not say that it cannot burn" in said(acid, "Fire")
    assert "Metals: May be corrosive to metals (H290)" in said(acid, "What it does")
    assert "Metals" not in said(mixture("etch-mix"), "What it does")


def test_what_is_mixed_here_sends_nobody_to_a_sheet_that_is_not_there() -> None:
    lab = demo().lab
    assert lab is not None
    for title in ("Fire", "Worn here", "Transport and law"):
        assert "ee the suppliers’ sheets of its parts." in said(mixture("etch-mix"), title)
        assert "ee the supplier’s sheet." in said(substance_view(lab, "sulfuric-acid-96"), title)


def test_a_label_says_what_an_amount_is_counted_as() -> None:
    """18 g/L is of H2SO4, not of the 96 % acid in the bottle, as the page of the bath says too."""
    lab = demo().lab
    assert lab is not None
    assert "sulfuric acid 96 %: 18\u00a0g/L as H2SO4" in chemical_label(lab, "etch-mix").under
    assert "18\u00a0g/L as H2SO4" in said(mixture("etch-mix"), "Made of")


def test_the_screening_stands_beside_the_declaration() -> None:
    """H410 is declared for the copper that the bath takes up; its composition does not know of it."""
    screening = mixture("etch-mix").screening
    assert screening is not None
    assert [one.code for one in screening.declared] == ["H314", "H317", "H334", "H410"]
    assert "H410" not in [one.code for one in screening.statements]
    assert "H410" in screening.only_declared and "The declaration stands" in screening.only_declared
    assert "the safety office and the law in force decide" in screening.caution
    assert all(row.evidence for row in screening.rows)
    assert any("from memory, not verified" in share.evidence for share in screening.shares)


def test_the_conditioner_can_be_screened() -> None:
    screening = mixture("cond-mix").screening
    assert screening is not None
    assert screening.refused == ""


def test_amounts_in_baths() -> None:
    """By hand: 72 g/L x 42 L = 3.024 kg; 60 mg/L x 42 L = 2.52 g."""
    lab = demo().lab
    assert lab is not None
    assert in_baths(lab.lab, "copper-sulfate") == ("3.02\u00a0kg in acid copper bath",)
    assert in_baths(lab.lab, "hydrochloric-acid-37") == ("2.52\u00a0g as chloride in acid copper bath",)


def test_the_lab_s_own_matrix_has_its_groups_alone_and_says_what_a_blank_is() -> None:
    found = table("reactivity")
    texts = [[cell.text for cell in row] for row in found.rows]
    assert any("not a statement of safety" in text for row in texts for text in row)
    assert BLANK in " ".join(found.foot)
    # EPA-600/2-80-076: 1 with 10 gives H; 1 with 104 gives H GT.
    heads = [row[0].text.split()[0] for row in found.rows]
    acid = 1 + heads.index("1")
    caustic = found.rows[heads.index("10")][acid]
    oxidiser = found.rows[heads.index("104")][acid]
    assert (caustic.text, caustic.note) == ("H", "heat generation")
    assert (oxidiser.text, oxidiser.note) == ("H GT", "heat generation, toxic gas")
    assert any("Not placed on the chart" in text for text in found.foot)


def test_the_wear_table_names_what_asks() -> None:
    rows = {row[0].text: row for row in table("worn_where").rows}
    heads = table("worn_where").heads
    lungs = rows["5 Micro-etch"][heads.index("Lungs")]
    assert lungs.text.startswith("Extraction") and lungs.note == "H334"
    hands = rows["4 Fixing oven"][heads.index("Hands")]
    assert hands.text == "Heat gloves" and hands.note == "hot surface"


def test_waste_streams_bring_the_statements_of_their_baths() -> None:
    rows = {row[0].text: [cell.text for cell in row] for row in table("waste_streams").rows}
    assert rows["Etch drum"][2] == "H314, H317, H334, H410"
    assert rows["Sink drain with silt trap"][5].startswith("runs to the drain; decided by: college safety")


def test_old_and_missing_sheets_are_marked(tmp_path: Path) -> None:
    home = make_lab(tmp_path, lab="""
lab: {sheets_good_for: 2 years}
substances:
  old-acid: {title: Old acid, cas: 64-19-7, hazards: [H314], sheet: {held_at: a drawer, dated: 2023-01-05}}
  lone-acid: {title: Lone acid, cas: 64-19-7, hazards: [H314]}
  mute: {title: Mute powder}
""")  # fmt: skip
    read = read_lab(open_folder(home, "procedures"))
    lab = check(read, TODAY).lab
    assert lab is not None
    rows = {row[0].text: row for row in lab_hazards_view(lab).tables[0].rows}
    assert rows["Old acid"][4].text == "TOO OLD: 3 years old"
    assert rows["Lone acid"][4].text == "no sheet named"
    assert rows["Mute powder"][1].text == "not known: not declared"
    view = substance_view(lab, "mute", ())
    assert "No hazards are declared" in view.label.unknown
    assert "Hazards not known" in chemical_label(lab, "mute").stop


def test_a_label_says_the_date_of_the_sheet_and_no_age_that_would_be_false_later() -> None:
    lab = demo().lab
    assert lab is not None
    assert f"Supplier and sheet: yellow binder tab 6, dated {NOVEMBER}." in (
        chemical_label(lab, "sodium-persulfate").lines
    )


def test_the_office_reads_in_its_order() -> None:
    view = office_view(copper_run())
    titles = [one.title for one in view.sections]
    assert titles == [
        "Process", "Hazards", "Protective equipment", "Controls", "Handling and storage",
        "Spill and first action", "Waste", "Decontamination", "Approvals", "Training",
        "Operations that need prior approval",
    ]  # fmt: skip
    assert all(one.lines for one in view.sections)
    prior = lines(view.sections[-1])
    assert "held until" in prior and "H334" in prior
    assert "Observed full run, valid 12\u00a0months" in lines(view.sections[-2])
    assert "Course instructor" in view.signs


def lines(heading: HazardHeadingView) -> str:
    return " | ".join(f"{line.label}: {line.text}" for line in heading.lines)


def test_every_view_carries_the_caution() -> None:
    lab = demo().lab
    assert lab is not None
    views = [*(mixture(str(id)) for id in lab.lab.mixtures)]
    views += [substance_view(lab, str(id), ()) for id in lab.lab.substances]
    assert {one.caution for one in views} == {CAUTION}
    assert {hazards_view(one).caution for one in demo().studies.values()} == {CAUTION}
    assert all("stand above this label" in one.caution for one in waste_labels(lab))


@pytest.mark.parametrize(
    ("days", "words"), [(0, "0 days"), (1, "1 day"), (40, "1 month"), (800, "2 years"), (-3, "not yet a day")]
)
def test_ages(days: int, words: str) -> None:
    assert age_words(datetime.timedelta(days=days)) == words


def test_what_no_statement_says_is_lost_on_no_paper() -> None:
    """Mixed resin heats itself: its sheet and labels, the office sheet and the procedure's summary say so."""
    said_so = "Heats itself in the cup"
    lab = demo().lab
    assert lab is not None
    assert said_so in said(mixture("fresh-resin"), "What it does")
    assert said_so in chemical_label(lab, "fresh-resin").stop
    assert said_so in next(one for one in waste_labels(lab) if one.title == "Open tin in the hood").stop
    cast = demo().studies["cast-a-block"]
    assert said_so in str(office_view(cast))
    assert said_so in [sign.title for sign in hazards_view(cast).words]
