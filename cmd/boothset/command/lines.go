package command

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"
	"sync"

	"boothset/calc"
	"boothset/presets/words"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// commandLines is requests to a command of the shop, one JSON object a line, whose keys are the
// command's flags: each is answered by the command as if it were run for it alone.
type commandLines struct {
	p     *Program
	words *words.Words
	again func(*Program) *cobra.Command // the command, anew
	fixed *pflag.FlagSet                // those that were set hold for each line
	text  bool                          // answers are words, and faults go to standard error
	one   *sync.Mutex                   // held while a line is answered, where they are to follow each other
	errs  sync.Mutex                    // held while something goes to standard error
	named string                        // the flag that a line is called by in faults, empty where its number does
}

// beside is the flags that go beside --batch; all others each request gives itself.
var beside = []string{flagBatch, flagJSON, flagFields, flagJobs, flagUnits, flagLang, flagShop, flagDryRun}

// onlyTyped is the flags that are no keys of a request.
var onlyTyped = append([]string{flagOutput, flagFormat, flagPaper, flagForce, flagLang, "help"}, beside...)

// batchAsked is the flags by which a command answers requests.
type batchAsked struct {
	batch bool
	jobs  string
}

func (a *batchAsked) batchFlags(c *cobra.Command) {
	c.Flags().BoolVar(&a.batch, flagBatch, false, "usage-batch")
	c.Flags().StringVar(&a.jobs, flagJobs, "", "usage-jobs")
}

// runLines answers the requests on standard input, where that was asked for: then ran is true.
// Those of a command that writes follow each other.
func (a *batchAsked) runLines(p *Program, c *cobra.Command, writes bool, again func(*Program) *cobra.Command) (ran bool, err error) {
	if !a.batch && a.jobs == "" {
		return false, nil
	}
	o, err := p.open()
	switch {
	case err != nil:
		return true, err
	case !a.batch:
		return true, &fieldError{flagJobs, a.jobs, o.words.Say("want-batch")}
	}
	if err := aloneWithBatch(c.Flags(), o.words); err != nil {
		return true, err
	}
	jobs, err := jobsOf(a.jobs, o.words)
	if err != nil {
		return true, err
	}
	l := &commandLines{p: p, words: o.words, again: again, fixed: c.Flags()}
	if writes {
		jobs, l.one = 1, &sync.Mutex{}
	}
	_, err = pickOf(schemaOf(c), l.fixed.Lookup(flagFields).Value.String(), o.words)
	if err == nil {
		p.code = p.runLines(o, p.Std.In, jobs, oneLine, l.answer)
	}
	return true, err
}

// answer answers a line.
func (l *commandLines) answer(dst, text []byte, n int, said bool) ([]byte, int) {
	if l.one != nil {
		l.one.Lock()
		defer l.one.Unlock()
	}
	var out, told bytes.Buffer
	sub := &Program{Std: Stdio{Out: &out, Err: &told}, Getenv: l.p.Getenv, Version: l.p.Version, common: l.p.common, local: l.p.local, said: said, line: true}
	c := l.again(sub)
	args, err := l.read(c, sub, text)
	if err == nil {
		err = c.RunE(c, args)
	}
	if err != nil && l.named != "" {
		err = fmt.Errorf("%s %s: %w", l.named, c.Flags().Lookup(l.named).Value, err)
	}
	if err != nil && l.text {
		sub.code = sub.refuse(err)
	}
	if told.Len() > 0 {
		l.errs.Lock()
		_, _ = l.p.Std.Err.Write(told.Bytes()) // there is nobody else to tell
		l.errs.Unlock()
	}
	if err != nil && !l.text {
		return appendError(dst, n, err), codeOf(err)
	}
	return append(dst, out.Bytes()...), sub.code
}

// read sets a command's flags by a request, and gives its arguments that are no flags.
func (l *commandLines) read(c *cobra.Command, sub *Program, text []byte) (args []string, err error) {
	keys := lineKeys(c)
	raw, err := readObject(text, keys, l.words)
	if err != nil {
		return nil, err
	}
	l.fixed.Visit(func(f *pflag.Flag) {
		own := c.Flags().Lookup(f.Name)
		if own != nil && !slices.Contains([]string{flagJSON, flagBatch, flagJobs}, f.Name) {
			setAlike(own, f)
		}
	})
	for _, key := range slices.Sorted(maps.Keys(raw)) {
		given, kind := textOf(raw[key])
		flag := c.Flags().Lookup(strings.ReplaceAll(key, "_", "-"))
		want := "want-text-or-number"
		switch {
		case flag != nil && repeats(flag):
			want = "want-list"
		case kind == "" && kindOf(raw[key]) == kindArray:
			kind = kindArray
		}
		if kind != "" {
			return nil, otherKind(l.words, key, kind, l.words.Say(want))
		}
		switch {
		case key == argumentOf(c):
			args = given
			continue
		case key == keyUnits:
			sub.common.units = strings.Join(given, "")
			continue
		}
		for _, t := range given {
			if err := flag.Value.Set(t); err != nil {
				return nil, err
			}
		}
	}
	if !l.text {
		err = c.Flags().Lookup(flagJSON).Value.Set("true")
	}
	return args, err
}

// setAlike sets a flag as another of its name is.
func setAlike(flag, as *pflag.Flag) {
	if all, ok := as.Value.(pflag.SliceValue); ok {
		_ = flag.Value.(pflag.SliceValue).Replace(all.GetSlice()) // of texts, which fails for none
		return
	}
	_ = flag.Value.Set(as.Value.String()) // it was read from text
}

// repeats reports whether a flag may be given more than once.
func repeats(f *pflag.Flag) bool {
	if field, ok := f.Value.(*fieldFlag); ok {
		return field.row.Repeats
	}
	_, several := f.Value.(pflag.SliceValue)
	return several
}

// argumentOf is the key of what a command takes that is no flag, empty where it takes none.
func argumentOf(c *cobra.Command) string {
	_, name, _ := strings.Cut(c.Use, " ")
	return strings.ToLower(strings.Trim(name, "[]"))
}

// lineKeys is the keys that a request to a command may hold.
func lineKeys(c *cobra.Command) (keys []string) {
	if of := argumentOf(c); of != "" {
		keys = append(keys, of)
	}
	c.Flags().VisitAll(func(f *pflag.Flag) {
		switch {
		case f.Value.Type() == "bool":
		case !slices.Contains(onlyTyped, f.Name), f.Name == flagShop && repeats(f):
			keys = append(keys, strings.ReplaceAll(f.Name, "-", "_"))
		}
	})
	return append(keys, keyUnits)
}

// readObject reads a line's object, its keys in lower case, each one of those that it may hold.
func readObject(line []byte, keys []string, w *words.Words) (map[string]json.RawMessage, error) {
	if len(line) > longestLine {
		return nil, wholeLine(spoken(w, "want-shorter", calc.CountFigure("most", longestLine)))
	}
	var raw map[string]json.RawMessage
	d := json.NewDecoder(bytes.NewReader(line))
	if err := d.Decode(&raw); err != nil {
		return nil, lineFault(err, w)
	}
	if _, err := d.Token(); err != io.EOF {
		return nil, wholeLine(w.Say("want-one-object"))
	}
	for _, key := range slices.Sorted(maps.Keys(raw)) {
		if lower := strings.ToLower(key); lower != key {
			raw[lower] = raw[key]
			delete(raw, key)
			key = lower
		}
		if !slices.Contains(keys, key) {
			return nil, &fieldError{field: key, want: spoken(w, "want-field", calc.TextFigure("names", strings.Join(keys, ", ")))}
		}
	}
	return raw, nil
}
