# Two commands do all set-up themselves: make demo, make test.
# Go and a C compiler are all that must be there (apt-get install golang gcc g++ make on Debian).

GO ?= go
FUZZTIME ?= 60s
DEMO = testdata/demo/logs
DEMO_TRACKS = testdata/demo/tracks
# packages under testdata, which ./... passes over
FIXTURES = ./testdata/bench ./testdata/browser ./testdata/crossed ./testdata/demo ./testdata/seasons ./testdata/corpus/make/excelize

.PHONY: help build demo test prove check race fuzz bench golden dist dist-test clean

help: ## what can be made
	@grep -E '^[a-z-]+:.*##' Makefile | sed -E 's/:.*##/\t/'

build: ## the program, in bin/
	@mkdir -p bin
	$(GO) build -o bin/wakeledger ./cmd/wakeledger

demo: build ## two invented seasons: logs in, season file and report out
	rm -f season.duckdb season.duckdb.wal
	bin/wakeledger --db season.duckdb season --ocean pacific --units us --out season.html $(DEMO)/* $(DEMO_TRACKS)/* || [ $$? = 3 ] # 3: the demo logs leave questions open
	@echo
	@echo "season file: season.duckdb"
	@echo "report:      season.html (open it in a browser; it needs no network)"

test: check ## what is checked before a change goes in
	$(GO) test -short -timeout 20m ./... $(FIXTURES)

# The tests that a short run leaves out or cuts short, whole.
PROVEN = $(shell grep -rl --include='*_test.go' 'testing.Short' cmd pipeline queries reports)
PROOFS = $(shell awk '/^func Test/ {split($$2, name, "[^A-Za-z0-9_]")} /testing.Short/ {print name[1]}' $(PROVEN) | sort -u | paste -sd '|')

prove: ## what takes minutes: the corpus of logs, simulated seasons, kills, races, fuzzing
	$(GO) test -timeout 60m -run '^($(PROOFS))$$' $(sort $(addprefix ./,$(dir $(PROVEN))))
	$(MAKE) race
	$(MAKE) fuzz FUZZTIME=2000x

check: ## formatting, vet and staticcheck
	@unformatted=$$(gofmt -l cmd pipeline queries reports testdata); \
	if [ -n "$$unformatted" ]; then echo "not in gofmt's form: $$unformatted"; exit 1; fi
	$(GO) vet ./... $(FIXTURES)
	$(GO) tool staticcheck ./... $(FIXTURES)

# The race detector where goroutines are, without linking the database again.
race:
	$(GO) test -race ./pipeline/batch ./pipeline/sheet ./pipeline/normalise

# A count of inputs rather than a time where a run must not fail by chance: an input under way
# when the time is over can end as "context deadline exceeded".
fuzz: ## each fuzz target for a minute, or for FUZZTIME (60s, or 2000x inputs)
	@set -e; for p in $$(grep -rl --include='*_test.go' '^func Fuzz' pipeline | xargs -n1 dirname | sort -u); do \
	  for f in $$(grep -rhoE '^func Fuzz[A-Za-z]+' $$p/*_test.go | cut -d' ' -f2); do \
	    echo "$$p $$f"; $(GO) test -run '^$$' -fuzz "^$$f\$$" -fuzztime $(FUZZTIME) -fuzzminimizetime 5x ./$$p; \
	  done; \
	done

bench: build ## speed, as ratios in one run
	WAKELEDGER_BIN=$(CURDIR)/bin/wakeledger $(GO) test -run '^$$' -bench . -benchtime 3x -timeout 40m ./cmd/wakeledger
	$(GO) test -run '^$$' -bench . -benchtime 1s ./pipeline/unit ./pipeline/sheet ./pipeline/normalise ./pipeline/track

golden: ## write expected outputs anew; read the difference before committing
	$(GO) test ./cmd/... -update

dist: ## archives for the captain's own laptop, in bin/dist
	$(GO) run ./cmd/dist

dist-test: ## runs what dist made, on Wine and under QEMU
	$(GO) run ./cmd/dist try

clean: ## what the commands above made
	rm -rf bin season.duckdb season.duckdb.wal season.html
