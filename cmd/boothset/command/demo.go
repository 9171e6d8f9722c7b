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
	var a jsonAsked
	c := &cobra.Command{
		Use: commandDemo + " [DIR]", Short: p.local.Say("brief-demo"),
		RunE: func(c *cobra.Command, args []string) error {
			if len(args) > 1 {
				return p.noArgs(c, args[1:])
			}
			return p.makeDemo(args, &a)
		},
	}
	a.jsonFlags(c)
	return c
}

// makeDemo makes the shop in the folder that is named, else in a temporary one, and says what
// to try with it.
func (p *Program) makeDemo(args []string, a *jsonAsked) error {
	w, err := p.words()
	if err != nil {
		return err
	}
	if err := a.checkFields(commandDemo, w); err != nil {
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
		return unkept(w, err)
	}
	made := spoken(w, "demo-made", calc.PathFigure("file", dir))
	var tries []string
	for _, try := range []string{"shop --shop %s", "drift --shop %s --booth " + demo.Two, "sheet --shop %s --booth " + demo.Two} {
		tries = append(tries, fmt.Sprintf(name+" "+try, shellWord(dir)))
	}
	if a.asJSON {
		p.code = p.write(w, a.document(commandDemo, func(j *jsonWriter) {
			j.text("folder", dir)
			j.bool("invented", true)
			j.text("text", made)
			j.array("try", func() {
				for _, try := range tries {
					j.text("", try)
				}
			})
		}), false)
		return nil
	}
	p.code = p.say(made + "\n" + w.Say("demo-try") + "\n  " + strings.Join(tries, "\n  ") + "\n")
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
	s = words.Printable(s)
	if strings.Trim(s, plain) == "" {
		return s
	}
	return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'"
}
