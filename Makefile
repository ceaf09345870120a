# Each target first makes what it needs (.venv from uv.lock, once). Needs make and Python 3.11 or newer, no more.
# make demo    build the demo business and its week, write demo-output/
# make serve   open what make demo built, on http://127.0.0.1:8000 (PORT=...)
# make test    everything a change must pass; make check: the part that runs no test
# make up      web, worker and beat on PostgreSQL and Redis (DATABASE_URL, REDIS_URL, or servers of its own)
# make bench   the timed checks
# make long    every browser test of the crush page; make test leaves out those that take minutes
# make audit   known faults of what we depend on (asks PyPI; says so where it cannot); make licences, make sbom
# make client  the description of the API and the Python client, made anew from the code
# make hunt    the random tests with examples never tried before (what it finds becomes a test of its own)

MAKEFLAGS += --no-print-directory
PORT ?= 8000
# Calls that each operation of the API is asked at random in make test.
API_EXAMPLES ?= 50
PYTHON_BIN := .venv/bin/python
READY := .venv/.trimops-ready
APPS := trimops farms visits invoicing manage.py
# Production settings with throwaway values, for Django's own deployment check.
AS_DEPLOYED := env TRIMOPS_DEBUG=0 TRIMOPS_HTTPS=1 TRIMOPS_ALLOWED_HOSTS=trimops.example \
	TRIMOPS_SECRET_KEY=checked-only-never-used-0123456789-abcdefghijklmnopqrstuvwxyz
# because: a machine that forbids Python to keep what it compiled would have each of some thirty processes compile it all
export PYTHONDONTWRITEBYTECODE :=
# Tables come straight from the models; the migrations themselves are run once on each database, below. Whole files go to
# one process, which makes what stands for a file once; in the order of tests/conftest.py, the longest browser tests first.
PYTEST := $(PYTHON_BIN) -m pytest -n 2 --dist loadfile --no-loadscope-reorder -q --nomigrations
# For the run on servers nothing is gathered from here: it hangs on no database, or is tried there by what it calls.
NOT_ON_SERVERS := $(addprefix --ignore tests/,architecture bench browser kernel paper published standards web fuzz \
	farms/api farms/domain farms/web invoicing/api trimops/accounts/web trimops/portal/api visits/api/kit \
	invoicing/documents invoicing/domain invoicing/web trimops/portal/demo trimops/portal/web \
	visits/documents visits/domain visits/web) \
	$(addprefix --ignore ,$(filter-out tests/walls/test_every_cell.py,$(wildcard tests/walls/test_*.py)))
MIGRATED := manage.py migrate --verbosity 0 && $(PYTHON_BIN) manage.py check_papers

.NOTPARALLEL:
.PHONY: setup demo serve up bench long hunt audit licences sbom check check-beside test test-embedded test-servers chromium client

setup: $(READY)

$(READY): pyproject.toml uv.lock .make/bootstrap.sh
	@PYTHON="$(PYTHON)" sh .make/bootstrap.sh

demo: $(READY)
	@$(PYTHON_BIN) manage.py migrate --verbosity 0
	@$(PYTHON_BIN) manage.py demo

serve: $(READY)
	@PYTHONPATH=. PORT=$(PORT) $(PYTHON_BIN) .make/serve.py

up: $(READY)
	@PYTHONPATH=. PORT=$(PORT) $(PYTHON_BIN) .make/up.py

bench: $(READY)
	@$(PYTHON_BIN) -m tests.bench
	TRIMOPS_SEQUENCES=2000 $(PYTHON_BIN) -m tests.services.with_services $(PYTHON_BIN) -m pytest -q tests/visits/api/test_crush_machine.py
	env -u DATABASE_URL -u REDIS_URL TRIMOPS_LONG=1 $(PYTHON_BIN) -m pytest -q --nomigrations tests/walls/test_every_cell.py
	TRIMOPS_LONG=1 $(MAKE) test-servers
	TRIMOPS_LONG=1 TRIMOPS_COWS=60 TRIMOPS_PICTURES=1 $(PYTHON_BIN) -m pytest -q tests/browser/test_crush_sixty.py tests/browser/test_crush_states.py

client: $(READY)
	@$(PYTHON_BIN) manage.py describe_api
	@$(PYTHON_BIN) -m tests.trimops.client.making

long: $(READY) chromium
	env -u DATABASE_URL -u REDIS_URL TRIMOPS_LONG=1 $(PYTEST) tests/browser

hunt: $(READY)
	env -u DATABASE_URL -u REDIS_URL TRIMOPS_HUNT=1 $(PYTEST) -m "not services and not browser"

audit: $(READY)
	@$(PYTHON_BIN) .make/supply.py audit

licences: $(READY)
	@$(PYTHON_BIN) .make/supply.py licences

sbom: $(READY)
	@$(PYTHON_BIN) .make/supply.py sbom demo-output/sbom.cdx.json

# The types take as long as all the rest, and one process: so the rest runs beside them.
check: $(READY)
	$(PYTHON_BIN) -m ruff check .
	$(PYTHON_BIN) -m ruff format --check .
	@echo "$(PYTHON_BIN) -m mypy $(APPS)"; $(PYTHON_BIN) -m mypy $(APPS) & types=$$!; \
		$(MAKE) check-beside; beside=$$?; wait $$types && exit $$beside

check-beside:
	.venv/bin/lint-imports
	$(PYTHON_BIN) manage.py makemigrations --check --dry-run
	@folder=$$(mktemp -d) && env -u DATABASE_URL TRIMOPS_DATA_DIR=$$folder sh -c "$(PYTHON_BIN) $(MIGRATED)" && rm -r $$folder
	$(AS_DEPLOYED) $(PYTHON_BIN) manage.py check --deploy --fail-level WARNING
	$(PYTHON_BIN) -m tests.architecture.signature

chromium:
	@sh .make/chromium.sh

# Two runs: everything on the embedded form, then what touches the database on the servers. Of the walk through every
# cell of the wall (tests/walls/test_every_cell.py) the first tries what is one's own and a part of the rest, the second
# a part of all (whole on both in `make bench`); what the benches print hangs on no database. What pages and the API
# read is tried on servers by their selectors and services: of a table of cases the first and the last, of a file the
# first two tests and a third of the rest (all of it in `make bench`), unless they bear the mark `both`. The random days
# at the crush are four on each.
test: $(READY) chromium check test-embedded test-servers

test-embedded: $(READY)
	env -u DATABASE_URL -u REDIS_URL TRIMOPS_SEQUENCES=4 TRIMOPS_API_EXAMPLES=$(API_EXAMPLES) $(PYTEST) -m "not services"

test-servers: $(READY)
	TRIMOPS_SEQUENCES=4 $(PYTHON_BIN) -m tests.services.with_services sh -c '$(PYTHON_BIN) $(MIGRATED) && \
		$(PYTEST) -m database $(NOT_ON_SERVERS)'
