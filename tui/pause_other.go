//go:build !unix

package tui

import (
	"os"

	tea "github.com/charmbracelet/bubbletea"
)

// canPause: there are no shells here that stop a program and continue it.
const canPause = false

func whenPaused(chan<- os.Signal) {}

func pauseCmd() tea.Cmd { return nil }
