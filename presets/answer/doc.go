// Package answer turns what calc worked out into rows with roles: verdict, value, caution
// with its level, reason with its ground. Every surface (card, JSON, plain lines, screen,
// pages) says an answer by these rows and decides by their roles, never by their text.
//
//	a, err := answer.Ask(reader, question.Day, answers, unit.US)
//	for _, l := range answer.Lay(a.Rows(reader.Words(), unit.US), 80) { ... }
package answer
