package words_test

import (
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// none is a code that the standard of language codes, ISO 639, leaves to private use, so no
// file has it.
const none = "qaa"

// Each file of the folder is a language, whatever their number.
func TestLanguagesAreTheFiles(t *testing.T) {
	found, err := filepath.Glob("*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, found)
	var codes []string
	for _, file := range found {
		codes = append(codes, strings.TrimSuffix(file, ".toml"))
	}
	assert.Equal(t, codes, words.Languages())
	for _, code := range codes {
		assert.Regexp(t, "^[a-z]{2,3}$", code)
		w, ok := words.For(code)
		require.True(t, ok)
		assert.Equal(t, code, w.Lang())
		again, _ := words.For(code)
		assert.Same(t, w, again, "read once")
	}
	assert.Equal(t, "en", words.English().Lang())
}

func TestThereIsNoOtherLanguage(t *testing.T) {
	for _, code := range []string{none, "", "en.toml", "../words/en", "EN"} {
		_, ok := words.For(code)
		assert.False(t, ok, code)
	}
}

func TestSpellings(t *testing.T) {
	every := []words.Spelling{words.RangeTo, words.Morning, words.Afternoon, words.Gun}
	of := map[string]words.Spelling{}
	for _, s := range every {
		all := words.Spellings(s)
		require.GreaterOrEqual(t, len(all), len(words.Languages()), s)
		for _, spelled := range all {
			assert.NotEmpty(t, spelled, s)
			assert.Equal(t, strings.ToLower(strings.TrimSpace(spelled)), spelled, s)
			if other, there := of[spelled]; there {
				assert.Equal(t, s, other, "%q is read two ways", spelled)
			}
			of[spelled] = s
		}
	}
	assert.Contains(t, words.Spellings(words.RangeTo), "to")
	assert.Contains(t, words.Spellings(words.RangeTo), "a")
	assert.True(t, slices.Contains(words.Spellings(words.Morning), "am") && slices.Contains(words.Spellings(words.Afternoon), "pm"))
	for _, id := range words.English().IDs() {
		if strings.HasPrefix(id, "spelled-") {
			assert.Contains(t, every, words.Spelling(id))
		}
	}
}

// A name that stands in a sentence has no article before it: which it would be goes by the
// name.
func TestNoArticleBeforeAName(t *testing.T) {
	article := regexp.MustCompile(`(?i)\b(an?|una?|el|la) \{(gun|coat|name|part)[:}]`)
	for _, lang := range words.Languages() {
		w, _ := words.For(lang)
		for _, id := range w.IDs() {
			if !strings.Contains(id, "now-") { // there {gun} is a pressure
				assert.NotRegexp(t, article, w.Say(id), id)
			}
		}
	}
}
