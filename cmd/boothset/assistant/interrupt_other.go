//go:build !unix

package assistant

// quitInterrupts does nothing: no key sends such a signal here.
func quitInterrupts() (off func()) { return func() {} }
