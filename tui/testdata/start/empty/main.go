// Empty draws one frame with the libraries of the assistant, opened as the assistant opens
// them: what its first frame is measured against.
package main

import (
	"fmt"
	"os"

	_ "boothset/tui/early" // before the terminal library

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
)

type empty struct{ frame string }

var quit = key.NewBinding(key.WithKeys("q"))

func (m empty) Init() tea.Cmd { return nil }

func (m empty) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.frame = lipgloss.NewStyle().Bold(true).Render(fmt.Sprintf("an empty frame of %d x %d", msg.Width, msg.Height))
	case tea.KeyMsg:
		if key.Matches(msg, quit) {
			return m, tea.Quit
		}
	}
	return m, nil
}

func (m empty) View() string { return m.frame }

func main() {
	p := tea.NewProgram(empty{}, tea.WithAltScreen(), tea.WithFPS(120), tea.WithoutSignalHandler())
	if _, err := p.Run(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
