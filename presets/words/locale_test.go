package words_test

import (
	"testing"

	"boothset/calc/unit"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
)

func TestLanguageAndUnitsOfALocale(t *testing.T) {
	us := words.Locale{System: unit.US, HasSystem: true}
	metric := words.Locale{System: unit.Metric, HasSystem: true}
	comma := words.Locale{System: unit.Metric, HasSystem: true, Comma: true}
	in := func(l words.Locale, lang string) words.Locale {
		l.Lang = lang
		return l
	}
	for _, c := range []struct {
		name string
		env  map[string]string
		want words.Locale
	}{
		{"nothing", nil, words.Locale{Lang: "en"}},
		{"C", map[string]string{"LANG": "C.UTF-8"}, words.Locale{Lang: "en"}},
		{"POSIX", map[string]string{"LC_ALL": "POSIX"}, words.Locale{Lang: "en"}},
		{"English alone", map[string]string{"LANG": "en"}, words.Locale{Lang: "en"}},
		{"Spanish alone", map[string]string{"LANG": "es"}, words.Locale{Lang: "es"}},
		{"United States", map[string]string{"LANG": "en_US.UTF-8"}, in(us, "en")},
		{"Spanish in the United States", map[string]string{"LANG": "es_US.UTF-8"}, in(us, "es")},
		{"Puerto Rico", map[string]string{"LANG": "es_PR"}, in(us, "es")},
		{"Liberia", map[string]string{"LANG": "en_LR"}, in(us, "en")},
		{"Myanmar", map[string]string{"LANG": none + "_MM"}, in(us, "en")},
		{"Britain", map[string]string{"LANG": "en_GB.UTF-8"}, in(metric, "en")},
		{"Mexico", map[string]string{"LANG": "es_MX.UTF-8"}, in(metric, "es")},
		{"Spain, with a modifier", map[string]string{"LANG": "es_ES@euro"}, in(comma, "es")},
		{"numbers apart", map[string]string{"LANG": "es_MX.UTF-8", "LC_NUMERIC": "es_AR.UTF-8"}, in(comma, "es")},
		{"numbers of another language", map[string]string{"LANG": "es_MX.UTF-8", "LC_NUMERIC": "de_DE.UTF-8"}, in(metric, "es")},
		{"Germany, in no language of ours", map[string]string{"LANG": none + "_DE.UTF-8"}, in(metric, "en")},
		{"a language tag", map[string]string{"LANG": "es-mx"}, in(metric, "es")},
		{"a language whose code begins as one of ours", map[string]string{"LANG": "enx_EE"}, in(metric, "en")},
		{"messages apart", map[string]string{"LANG": "en_US.UTF-8", "LC_MESSAGES": "es_MX.UTF-8"}, in(us, "es")},
		{"measures apart", map[string]string{"LANG": "en_US.UTF-8", "LC_MEASUREMENT": "de_DE.UTF-8"}, in(metric, "en")},
		{"all over the rest", map[string]string{"LC_ALL": "es_MX", "LANG": "en_US", "LC_MESSAGES": "en_US", "LC_MEASUREMENT": "en_US"}, in(metric, "es")},
		{"all of C over the rest", map[string]string{"LC_ALL": "C", "LANG": "es_MX"}, words.Locale{Lang: "en"}},
		{"set and empty counts as not set", map[string]string{"LC_ALL": "", "LANG": "es_MX"}, in(metric, "es")},
	} {
		assert.Equal(t, c.want, words.LocaleOf(func(name string) string { return c.env[name] }), c.name)
	}
}
