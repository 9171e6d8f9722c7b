package command

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"boothset/calc"
	"boothset/presets/catalogue"
	"boothset/presets/demo"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/spf13/cobra"
)

// commandDemo is the command that makes an invented shop.
const commandDemo = "demo"

func (p *Program) demo() *cobra.Command {
	return &cobra.Command{
		Use: commandDemo + " [DIR]", Short: p.local.Say("brief-demo"),
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) > 1 {
				return p.noArgs(c, args[1:])
			}
			return p.makeDemo(args)
		},
	}
}

// makeDemo makes the shop in the folder that is named, else in a temporary one, and says what
// to try with it.
func (p *Program) makeDemo(args []string) error {
	w, err := p.words()
	if err != nil {
		return err
	}
	// As it ships: what a shop has of its own has no part in an invented one.
	c, err := catalogue.LoadIn(w, words.Locale{}, nil, "")
	if err != nil {
		return err
	}
	r, err := question.New(c)
	if err != nil {
		return err
	}
	dir, err := demoFolder(args)
	if err == nil {
		now := p.now()
		err = demo.Make(dir, r, time.Date(now.Year(), now.Month(), now.Day(), 0, 0, 0, 0, now.Location()))
	}
	var own *shop.Error
	switch {
	case errors.As(err, &own) && own.ID == demo.NotEmpty:
		return shopError(w, err)
	case err != nil:
		fmt.Fprintln(p.Std.Err, name+":", words.Printable(shopError(w, err).Error()))
		p.code = ExitFailed
		return nil
	}
	var b strings.Builder
	fmt.Fprintln(&b, spoken(w, "demo-made", calc.TextFigure("file", shop.Printable(dir, mostPath))))
	fmt.Fprintln(&b, w.Say("demo-try"))
	for _, try := range []string{"shop --shop %s", "drift --shop %s --booth " + demo.Two, "sheet --shop %s --booth " + demo.Two} {
		fmt.Fprintf(&b, "  %s "+try+"\n", name, shellWord(dir))
	}
	p.code = p.say(b.String())
	return nil
}

// demoFolder is the folder that is named, whole, else a new temporary one.
func demoFolder(args []string) (string, error) {
	if len(args) == 1 {
		return filepath.Abs(args[0])
	}
	return os.MkdirTemp("", "boothset-demo-")
}

// shellWord is a name as one word of a command that is typed.
func shellWord(s string) string {
	const plain = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789/._-:\\"
	s = shop.Printable(s, mostPath)
	if strings.Trim(s, plain) == "" {
		return s
	}
	return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'"
}
