# Everything the project needs, from a Debian with Python 3.11, pip and make and nothing else.
.DELETE_ON_ERROR:
.PHONY: site test lint check bench fuzz requirements clean chromium pango

PYTHON ?= python3
TEST_FLAGS ?= -n 2 --dist loadfile
BIN := .venv/bin
INSTALL := PIP_ROOT_USER_ACTION=ignore $(PYTHON) -m pip --python $(BIN)/python \
	install --quiet --no-input --disable-pip-version-check
APT := DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends
LOCK := $(BIN)/uv pip compile --quiet --universal --python-version 3.11 --generate-hashes \
	--no-emit-index-url --no-header

site: .venv/.project
	$(BIN)/newel build

test: .venv/.developer .venv/.project chromium
	$(BIN)/python -m pytest $(TEST_FLAGS)

lint: .venv/.developer .venv/.project
	$(BIN)/ruff check .
	$(BIN)/mypy
	$(BIN)/lint-imports --no-cache --no-logo

check: lint test

bench: .venv/.developer .venv/.project pango
	$(BIN)/python -m bench

# Strange input through four doors, 200,000 in all; FUZZ="--runs 1000" for a short look. Linux on x86-64 only.
fuzz: .venv/.fuzz .venv/.project
	$(BIN)/python -m tests.hostile.fuzz $(FUZZ)

clean:
	rm -rf .venv site build dist .cache .newel *.egg-info .mypy_cache .ruff_cache .pytest_cache .hypothesis
	find . -name __pycache__ -type d -prune -exec rm -rf {} +

# Debian ships venv without its pip unless another package is there; the pip outside does the work.
$(BIN)/python:
	$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11) and "Newel needs Python 3.11 or newer")'
	$(PYTHON) -m venv --without-pip .venv

.venv/.packages: requirements.txt | $(BIN)/python
	$(INSTALL) --require-hashes -r requirements.txt
	touch $@

.venv/.developer: requirements-dev.txt .venv/.packages
	$(INSTALL) --require-hashes -r requirements-dev.txt
	touch $@

.venv/.fuzz: requirements-fuzz.txt .venv/.developer
	$(INSTALL) --require-hashes -r requirements-fuzz.txt
	touch $@

.venv/.project: pyproject.toml .venv/.packages
	$(INSTALL) --no-deps --no-build-isolation --editable .
	$(BIN)/python -m compileall -q generator
	touch $@

# A browser test without a browser fails; as root on Debian the browser is fetched first.
chromium:
	@command -v chromium >/dev/null || command -v chromium-browser >/dev/null \
	|| { test "$$(id -u)" = 0 && apt-get update -qq \
	     && $(APT) chromium fonts-liberation >/dev/null; } \
	|| { echo "The tests need Chromium: install the package chromium." >&2; exit 1; }

# The benchmark compares with WeasyPrint, which draws through Pango.
pango:
	@$(BIN)/python -c 'import weasyprint' 2>/dev/null \
	|| { test "$$(id -u)" = 0 && apt-get update -qq \
	     && $(APT) libpangoft2-1.0-0 >/dev/null; } \
	|| { echo "The benchmark needs Pango: install the package libpangoft2-1.0-0." >&2; exit 1; }

# Pins follow pyproject.toml only when asked, with uv, which may be installed for this one use.
requirements: .venv/.project
	test -x $(BIN)/uv || $(INSTALL) uv
	$(LOCK) pyproject.toml requirements-build.in -o requirements.txt
	$(LOCK) --extra dev --extra planning --extra engines -c requirements.txt \
		pyproject.toml requirements-build.in -o requirements-dev.txt
	$(LOCK) --extra fuzz -c requirements-dev.txt pyproject.toml -o requirements-fuzz.txt
