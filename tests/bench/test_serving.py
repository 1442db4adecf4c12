"""The rows of the preview are measured in earnest: real command, real socket, real browser."""

from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from bench.serving import serve_rows


@pytest.mark.browser
def test_an_edit_is_followed_to_the_client_and_to_the_pixels(tmp_path: Path) -> None:
    with ThreadPoolExecutor(1) as apart:  # another test's browser may hold the loop of this thread
        html, pixels = apart.submit(lambda: tuple(serve_rows(tmp_path, 10, 1))).result()
    assert (html.what, html.count, html.runs) == ("edit to new HTML at the client, wall", 10, 1)
    assert (pixels.what, pixels.count) == ("edit to pixels in Chromium, wall", 10)
    assert pixels.runs == 1, pixels.yardstick
