# Needs nothing but Go. Tools come pinned through the tool lines of go.mod.
GO ?= go
FUZZTIME ?= 5m
BUILD = CGO_ENABLED=0 $(GO) build -trimpath -buildvcs=auto -ldflags="-s -w"

.PHONY: run test check build bench bench-peer bench-start crosscheck fuzz golden gallery pictures man recorded mutants ranges drift learn learn-reference soak dist dist-check

run: ## open the assistant
	@$(GO) run ./cmd/boothset

test: ## every test
	$(GO) test ./...

# The race detector needs a C compiler; without one the tests run without it.
RACE = $(shell command -v $$($(GO) env CC) >/dev/null 2>&1 && echo -race)

check: ## what must be green before a commit
	@test -z "$$(gofmt -l .)" || { gofmt -l .; echo "gofmt: the files above need formatting"; exit 1; }
	$(GO) vet ./...
	@set -e; for os in windows darwin; do echo "GOOS=$$os $(GO) vet ./..."; GOOS=$$os $(GO) vet ./...; done
	$(GO) tool staticcheck ./...
	@test -n "$(RACE)" || echo "no C compiler: the tests run without the race detector"
	$(GO) test $(RACE) -timeout 30m ./...

build: ## bin/boothset and bin/boothset-serve, static and trimmed; their version is the build's own
	$(BUILD) -o bin/ ./cmd/boothset ./cmd/boothset-serve

bench: ## benchmarks, with allocations
	$(GO) test -run '^$$' -bench . -benchmem ./calc/... ./presets/... ./tui/... ./cmd/...

golden: ## redraw the golden frames of the screens and the golden cards; look at every one that changed
	UPDATE_GOLDEN=1 $(GO) test ./tui/... ./cmd/...

man: ## man pages into bin/man, English; those of each other language into a folder of its code there
	@set -e; for f in presets/words/*.toml; do \
	  lang=$$(basename $$f .toml); dir=bin/man; test $$lang = en || dir=$$dir/$$lang; \
	  echo "$(GO) run ./cmd/man $$dir $$lang"; $(GO) run ./cmd/man $$dir $$lang; \
	done

DIST ?= bin/dist
dist: ## archives and packages of the commit for every system into the folder DIST, made in a clone of its own
	@set -e; d=$$(mktemp -d); trap 'rm -rf "$$d"' EXIT; \
	git clone --quiet . "$$d/tree"; cd "$$d/tree"; $(GO) run ./cmd/dist "$(abspath $(DIST))"

dist-check: ## make dist again elsewhere: the same sums; packages put in and taken out of clean systems, programs run
	@cmd/dist/check.sh "$(abspath $(DIST))"

ranges: ## the ranges by brute force: what they hold, what they come from, how often the wall falls short
	$(GO) test -count=1 -v -run '^TestCoverage$$' ./calc/spread

pictures: ## redraw the README's pictures from the screens; look at every one that changed
	UPDATE_GOLDEN=1 $(GO) test -count=1 -run '^TestPictures$$' ./tui

GALLERY ?= bin/gallery
gallery: ## every view and page as pictures in the folder GALLERY, light and dark, to be looked at; PNG where rsvg-convert is
	GALLERY=$(abspath $(GALLERY)) $(GO) test -count=1 -run '^TestGallery$$' ./tui ./tui/draw
	@if command -v rsvg-convert >/dev/null; then for f in $(GALLERY)/*.svg; do rsvg-convert "$$f" -o "$${f%.svg}.png"; done; fi

crosscheck: ## remake the vectors of the reference libraries and compare
	@GO=$(GO) calc/testdata/crosscheck.sh

recorded: ## recorded requests to the revision OLD and to the tree as it is: the same JSON; REQUESTS is further flags
	@test -n "$(OLD)" || { echo "make recorded OLD=REVISION"; exit 2; }
	@set -e; d=$$(mktemp -d); trap 'git worktree remove --force $$d/tree 2>/dev/null || true; rm -rf $$d' EXIT; \
	git worktree add --quiet --detach $$d/tree $(OLD); \
	(cd $$d/tree && $(BUILD) -o $$d/old ./cmd/boothset); \
	$(BUILD) -o $$d/new ./cmd/boothset; \
	$(GO) run ./cmd/boothset/testdata/requests -old $$d/old -new $$d/new -seed 1 -n 10000 $(REQUESTS)

bench-peer: ## our arithmetic beside the reference libraries', in one run, with ratios
	@GO=$(GO) calc/testdata/bench_peer.sh

bench-start: ## to the first frame and to a plan, beside an empty program and a hello world
	@set -e; d=$$(mktemp -d); trap 'rm -rf "$$d"' EXIT; \
	for p in hello empty; do $(BUILD) -o $$d/$$p ./tui/testdata/start/$$p; done; \
	$(BUILD) -o $$d/boothset ./cmd/boothset; \
	$(GO) run ./tui/testdata/start $$d

fuzz: ## every fuzz target for FUZZTIME
	@set -e; for d in $$($(GO) list -f '{{.Dir}}' ./...); do \
	  for f in $$(grep -hoE '^func Fuzz[A-Za-z0-9_]+' $$d/*_test.go 2>/dev/null | sed 's/^func //'); do \
	    echo "== $$d $$f"; $(GO) test -run '^$$' -fuzz "^$$f\$$" -fuzztime $(FUZZTIME) -fuzzminimizetime 20x -parallel 2 $$d; \
	  done; done

SOAK ?= 2h
SOAKED ?= bin/soak
SOAKPARALLEL ?= 2
soak: ## every fuzz target, anything on a terminal and killed writers in turn, SOAK in all; what is found goes into testdata/fuzz and SOAKED
	$(GO) run ./cmd/boothset/testdata/soak -for $(SOAK) -keep $(SOAKED) -parallel $(SOAKPARALLEL)

mutants: ## plant 400 small errors in calc, drawn by a seed, one at a time, and list those that no test sees; MUTANTS is further flags
	@GO=$(GO) $(GO) run ./calc/testdata/mutants $(MUTANTS)

drift: ## 500 simulated years: how often drift is found, how soon, and how often for nothing
	$(GO) test -count=1 -v -run '^TestSimulatedYears$$' ./calc/drift

LEARN_LINES ?= 2000
learn: ## 2,000 simulated lines learnt from readings, and as many worse ones; 200 on which readings are foretold (two hours of one core)
	LEARN_LINES=$(LEARN_LINES) $(GO) test -count=1 -v -timeout 24h -run '^TestOddPieces|^TestTheReadingNamed' ./calc/learn

learn-reference: ## remake what plain draws say of five lines, in calc/learn/testdata (half an hour)
	LEARN_REFERENCE=10000000 $(GO) test -count=1 -v -timeout 24h -run '^TestAgainstPlainDraws$$' ./calc/learn
