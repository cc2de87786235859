# Every target sets up what it needs in .venv; nothing is written elsewhere.
PYTHON ?= python3.11
VENV := .venv
PY := $(VENV)/bin/python
AS_OF ?= 2026-10-10

.PHONY: demo packet test test-shared lint bench pictures check lock clean

$(VENV)/run.done: requirements/run.txt
	$(PYTHON) -m venv $(VENV)
	$(PY) -m pip install --quiet --disable-pip-version-check --require-hashes -r requirements/run.txt
	$(PY) -m pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation --editable .
	touch $@

$(VENV)/dev.done: requirements/dev.txt $(VENV)/run.done
	$(PY) -m pip install --quiet --disable-pip-version-check --require-hashes -r requirements/dev.txt
	touch $@

# Opens the notebook in the browser with the example in it, kept in build/notebook.
demo: $(VENV)/run.done
	$(VENV)/bin/stemward serve --example --data build/notebook

# Plans the example and prints it. The example holds a stop (exit status 3), which is how it is meant.
packet: $(VENV)/run.done
	mkdir -p build
	$(VENV)/bin/stemward demo build/quarry-hollow
	$(VENV)/bin/stemward plan build/quarry-hollow --as-of $(AS_OF) --pdf build/quarry-hollow.pdf \
		--json build/quarry-hollow.json || test $$? -eq 3
	$(VENV)/bin/stemward verify build/quarry-hollow.json
	@echo "The packet is in build/quarry-hollow.pdf"

# Runs what is here and names what it skipped; CI=true makes a skip a failure.
test: $(VENV)/dev.done
	$(PY) -m pytest -q -n 2 --dist worksteal

# The notebook's tests again on the PostgreSQL that DATABASE_URL names: tools/with_postgres.sh make test-shared
SHARED := test_a_day_becomes_a_record test_filled_in_signed_and_corrected test_taken_back \
	test_the_same_day_sent_twice_is_written_once
test-shared: $(VENV)/dev.done
	@test -n "$$DATABASE_URL" || { echo "DATABASE_URL names no database; see tools/with_postgres.sh"; exit 2; }
	$(PY) -m pytest -q tests/notebook tests/field/test_receive.py tests/field/test_crowd.py tests/web/test_pages.py \
		$(addprefix tests/web/test_after.py::,$(SHARED))

lint: $(VENV)/dev.done
	$(VENV)/bin/ruff check .
	$(VENV)/bin/ruff format --check .
	$(VENV)/bin/mypy
	$(VENV)/bin/lint-imports
	$(PY) tools/lint_suffixes.py src
	$(PY) tools/make_docs.py --check
	$(PY) tools/make_vectors.py --check
	$(PY) tools/perturb.py
	$(PY) tools/mutate_checks.py

bench: $(VENV)/dev.done
	$(PY) bench/million.py
	$(PY) bench/start.py
	$(PY) bench/pages.py
	$(PY) bench/import_stems.py
	$(PY) bench/redraw.py
	$(PY) bench/reading.py
	$(PY) bench/dry.py
	$(PY) bench/calibration.py
	$(PY) bench/years.py
	$(PY) bench/trials.py
	$(PY) bench/phones.py
	$(PY) bench/walk.py

pictures: $(VENV)/dev.done packet
	$(PY) tools/pictures.py build/quarry-hollow.pdf

check: lint test

# Needs uv on the path; writes no index lines.
lock:
	uv pip compile -q --universal --python-version 3.11 --generate-hashes --no-header --no-annotate \
		requirements/run.in -o requirements/run.txt
	uv pip compile -q --universal --python-version 3.11 --generate-hashes --no-header --no-annotate \
		requirements/dev.in -o requirements/dev.txt

clean:
	rm -rf $(VENV) build
