# Each target first makes what it needs (.venv from uv.lock, once). Needs make and Python 3.11 or newer, no more.
# make demo    build the demo business and its week, write demo-output/
# make serve   open what make demo built, on http://127.0.0.1:8000 (PORT=...)
# make test    everything a change must pass; make check: the part that runs no test
# make up      web, worker and beat on PostgreSQL and Redis (DATABASE_URL, REDIS_URL, or servers of its own)
# make bench   the timed checks
# make long    every browser test of the crush page; make test leaves out those that take minutes
# make hunt    the random tests with examples never tried before (what it finds becomes a test of its own)

MAKEFLAGS += --no-print-directory
PORT ?= 8000
PYTHON_BIN := .venv/bin/python
READY := .venv/.trimops-ready
APPS := trimops farms visits invoicing manage.py
# Production settings with throwaway values, for Django's own deployment check.
AS_DEPLOYED := env TRIMOPS_DEBUG=0 TRIMOPS_HTTPS=1 TRIMOPS_ALLOWED_HOSTS=trimops.example \
	TRIMOPS_SECRET_KEY=checked-only-never-used-0123456789-abcdefghijklmnopqrstuvwxyz
# Tables come straight from the models; the migrations themselves are run once on each database, below.
PYTEST := $(PYTHON_BIN) -m pytest -n 2 -q --nomigrations
MIGRATED := manage.py migrate --verbosity 0 && $(PYTHON_BIN) manage.py check_papers

.NOTPARALLEL:
.PHONY: setup demo serve up bench long hunt check test test-embedded test-servers chromium

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
	TRIMOPS_LONG=1 TRIMOPS_COWS=60 TRIMOPS_PICTURES=1 $(PYTHON_BIN) -m pytest -q tests/browser/test_crush_sixty.py tests/browser/test_crush_states.py

long: $(READY) chromium
	env -u DATABASE_URL -u REDIS_URL TRIMOPS_LONG=1 $(PYTEST) tests/browser

hunt: $(READY)
	env -u DATABASE_URL -u REDIS_URL TRIMOPS_HUNT=1 $(PYTEST) -m "not services and not browser"

check: $(READY)
	$(PYTHON_BIN) -m ruff check .
	$(PYTHON_BIN) -m ruff format --check .
	$(PYTHON_BIN) -m mypy $(APPS)
	.venv/bin/lint-imports
	$(PYTHON_BIN) manage.py makemigrations --check --dry-run
	@folder=$$(mktemp -d) && env -u DATABASE_URL TRIMOPS_DATA_DIR=$$folder sh -c "$(PYTHON_BIN) $(MIGRATED)" && rm -r $$folder
	$(AS_DEPLOYED) $(PYTHON_BIN) manage.py check --deploy --fail-level WARNING
	$(PYTHON_BIN) -m tests.architecture.signature

chromium:
	@sh .make/chromium.sh

# Two runs: everything on the embedded form, then what touches the database on the servers. Who may open which address
# hangs on no database (the wall itself is tried on both in tests/tenancy), nor does what the benches print. What pages
# read is tried there by their selectors and services.
test: $(READY) chromium check test-embedded test-servers

test-embedded: $(READY)
	env -u DATABASE_URL -u REDIS_URL $(PYTEST) -m "not services"

test-servers: $(READY)
	$(PYTHON_BIN) -m tests.services.with_services sh -c '$(PYTHON_BIN) $(MIGRATED) && \
		$(PYTEST) -m "database and not browser" --ignore tests/walls/test_every_route.py --ignore tests/walls/test_every_api_address.py --ignore tests/bench \
		--ignore tests/trimops/portal/demo --ignore tests/walls/test_query_counts.py --ignore tests/walls/test_money_query_counts.py \
		--ignore tests/visits/web --ignore tests/trimops/portal/web --ignore tests/web'
