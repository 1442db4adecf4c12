"""What may not be loaded by reading a quantity."""

import os
import subprocess
import sys
from pathlib import Path


def test_no_unit_library_is_loaded() -> None:
    code = (
        "import sys, generator.units as u\n"
        "u.read_window('6 to 10 min'); u.show_quantity(u.read_quantity('8 min'))\n"
        "print([name for name in ('pint', 'numpy', 'pydantic') if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_units_load_fast(tmp_path: Path) -> None:
    code = (
        "import dataclasses, datetime, decimal, fractions, functools, re, time, types, typing, unicodedata\n"
        "import generator.problems\n"
        "start = time.process_time(); import generator.units; print(time.process_time() - start)"
    )
    # Compiled once, as on an instructor's machine from the second run on.
    compiled = {**os.environ, "PYTHONPYCACHEPREFIX": str(tmp_path), "PYTHONDONTWRITEBYTECODE": ""}
    command = [sys.executable, "-c", code]
    runs = [
        float(subprocess.run(command, capture_output=True, text=True, check=True, env=compiled).stdout)
        for _ in range(4)
    ]
    assert min(runs) < 0.015
