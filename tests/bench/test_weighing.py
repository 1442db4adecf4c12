"""The weight of a page, on a site of known size."""

from pathlib import Path

from bench.weighing import weigh


def test_a_page_weighs_what_it_loads(tmp_path: Path) -> None:
    (tmp_path / "assets/formulas").mkdir(parents=True)
    sizes = {"newel.js": 100, "theme.js": 1000, "newel.css": 10, "formulas/area.js": 5}
    for name, size in sizes.items():
        (tmp_path / "assets" / name).write_bytes(b"x" * size)
    page = tmp_path / "a" / "index.html"
    page.parent.mkdir()
    html = (
        '<link rel="stylesheet" href="../assets/newel.css?v=1"><link rel="icon" href="../assets/none.svg">'
        '<script src="../assets/newel.js"></script><script defer src="../assets/formulas/area.js"></script>'
        '<script src="../assets/theme.js"></script><script>let here;</script>'
    )
    page.write_text(html)
    weight = weigh(page)
    assert (weight.own, weight.whole) == (105, 1115 + len(html))
    assert 0 < weight.sent < weight.whole
