package words

// Of is the words of a text written as a language's file is.
func Of(lang, text string) (*Words, error) {
	sentences, err := scan(text)
	return &Words{lang, sentences, false}, err
}
