"""The numbers of a student's own part, and a lab's own formula with the lab's limits."""

import shutil
from collections.abc import Mapping
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from generator.formulas import find_formula
from tests.site.calculator_pages import (
    COPPER,
    PROCEDURE,
    LabSite,
    address,
    answer_of,
    box,
    plain,
    refusal_of,
)
from tests.site.lab_site import write_lab_site

pytestmark = pytest.mark.browser


CATCH = """document.addEventListener("newel:sums", (event) => { globalThis.caught = event.detail; })"""


def test_another_board_moves_everything_that_depends_on_it(page: Page, calculator_site: LabSite) -> None:
    """A board of 120 x 80 mm with 60 holes, 25 µm at 2.1 A/dm2: as Python works it out, to 1e-12."""
    page.add_init_script(CATCH)
    page.goto(address(calculator_site, PROCEDURE))
    run = page.locator(".nw-facts [data-nw-sum='plan.total']")
    before = plain(run.text_content())
    for name, text in (
        ("Length of the board", "120"),
        ("Width of the board", "8 cm"),
        ("Thickness of the board", "1.6"),
        (COPPER, "25"),
        ("Current density", "2.1"),
    ):
        box(page, name).fill(text)
    page.get_by_role("button", name="Remove this row").last.click()
    box(page, "How many of these").fill("60")
    board = {"length": "120 mm", "width": "8 cm", "board_thickness": "1.6 mm", "masked": "8 mm"}
    holes: tuple[Mapping[str, str | int], ...] = ({"count": 60, "drill": "0.9 mm"},)
    area = find_formula("plating_area").evaluate({**board, "holes": holes})
    amps = find_formula("plating_current").evaluate(
        {"density": "2.1 A/dm2", "area": area, "contact_area": "0.06 dm2"}
    )
    time = find_formula("plating_time").evaluate(
        {"copper": "25 um", "density": "2.1 A/dm2", "efficiency": "97 %"}
    )
    caught = page.evaluate("caught")
    assert caught["job.area"] == pytest.approx(area.si, rel=1e-12)
    assert caught["copper-in.power"] == pytest.approx(amps.si, rel=1e-12)
    assert caught["copper-in.for"] == pytest.approx(time.si, rel=1e-12)
    step = page.locator("#copper-in")
    assert plain(step.locator(".nw-dwell").text_content()) == f"{time.number:.0f} min"
    assert plain(step.locator("[data-nw-sum='copper-in.power']").text_content()) == f"{amps.number:.1f} A"
    seconds = step.locator("[data-nw-timer]").get_attribute("data-seconds")
    assert float(seconds or 0) == pytest.approx(time.si)
    after = plain(run.text_content())
    assert after != before
    page.reload()
    assert plain(run.text_content()) == after
    expect(page.get_by_text("Your own numbers, kept on this device.")).to_be_visible()
    page.get_by_role("button", name="Back to the class part").click()
    assert plain(run.text_content()) == before
    page.reload()
    expect(page.get_by_text("Your own numbers, kept on this device.")).to_be_hidden()


def test_a_part_that_the_procedure_is_not_for_is_refused(page: Page, calculator_site: LabSite) -> None:
    page.goto(address(calculator_site, PROCEDURE))
    sums = page.locator(".nw-answers")
    box(page, "Length of the board").fill("200")
    assert "this procedure is for up to 150 mm" in refusal_of(page)
    assert plain(sums.locator("[data-nw-sum='copper-in.power']").text_content()) == "no answer"
    box(page, "Length of the board").fill("140")
    box(page, "Current density").fill("0.6")
    assert "the copper cell takes 20 to 90 min" in refusal_of(page)
    dwell = page.locator("#copper-in .nw-dwell")
    expect(dwell).to_have_text("no answer")
    expect(page.locator(".nw-plan .nw-verdict")).to_contain_text("A time has no answer")


@pytest.fixture(scope="module")
def resin(tmp_path_factory: pytest.TempPathFactory) -> LabSite:
    """The casting room with settings of its own."""
    folder = tmp_path_factory.mktemp("resin")
    shutil.copytree(Path(__file__).parents[1] / "labs/resin", folder / "procedures")
    with (folder / "procedures/lab.yml").open("a", encoding="utf-8") as file:
        file.write(
            "calculators:\n  mix_ratio:\n    defaults: {resin: 150 g}\n    usual: {resin: 20 to 230 g}\n"
            "    never_above: {answer: 90 g, resin: 400 g}\n"
        )
    wanted = ("calculators/mix_ratio", "procedures/cast-a-block")
    return write_lab_site(folder / "procedures", folder, lambda at: at in wanted)


def test_a_labs_own_formula_with_its_limits(page: Page, resin: LabSite) -> None:
    """32 parts to 100, the ratio of the invented can: 48.00 g for 150 g."""
    page.goto(address(resin, "calculators/mix_ratio"))
    assert answer_of(page) == "48.00 g"
    box(page, "Resin").fill("0.25 kg")
    assert answer_of(page) == "80.00 g"
    assert "is usually 20 to 230 g" in refusal_of(page)
    box(page, "Resin").fill("300")
    assert answer_of(page) == "no answer"
    assert "comes out as 96.00 g: never above 90 g in this lab" in plain(
        page.locator(".nw-wrong").text_content()
    )
    box(page, "Resin").fill("500")
    assert "never above 400 g in this lab" in refusal_of(page)
    page.goto(address(resin, "procedures/cast-a-block"))
    expect(page.locator("#weigh-b [data-nw-sum]")).to_have_text("58.24\u00a0g")
    box(page, "Resin").fill("0.1 kg")
    expect(page.locator("#weigh-b [data-nw-sum]")).to_have_text("32.00\u00a0g")
    expect(page.locator("#weigh-a [data-nw-sum]")).to_have_text("0.1 kg")
