# Needs nothing but Go. Tools come pinned through the tool lines of go.mod.
GO ?= go
FUZZTIME ?= 5m

.PHONY: run test check build bench bench-peer crosscheck fuzz golden

run: ## open the assistant
	@$(GO) run ./cmd/boothset

test: ## every test
	$(GO) test ./...

check: ## what must be green before a commit
	@test -z "$$(gofmt -l .)" || { gofmt -l .; echo "gofmt: the files above need formatting"; exit 1; }
	$(GO) vet ./...
	$(GO) tool staticcheck ./...
	$(GO) test -race ./...

build: ## bin/boothset, static and trimmed; its version is the build's own
	CGO_ENABLED=0 $(GO) build -trimpath -buildvcs=auto -ldflags="-s -w" -o bin/boothset ./cmd/boothset

bench: ## benchmarks, with allocations
	$(GO) test -run '^$$' -bench . -benchmem ./calc/... ./presets/... ./cmd/...

golden: ## redraw the golden frames of the screens; look at every one that changed
	UPDATE_GOLDEN=1 $(GO) test ./tui/...
