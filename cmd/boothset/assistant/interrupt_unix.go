//go:build unix

package assistant

import (
	"os"
	"os/signal"
	"syscall"
)

// quitInterrupts makes what ctrl+\ sends end the program as what ctrl+c sends does, without a
// dump of it, until it is called off.
func quitInterrupts() (off func()) {
	quits := make(chan os.Signal, 1)
	signal.Notify(quits, syscall.SIGQUIT)
	go func() {
		if _, sent := <-quits; sent {
			_ = syscall.Kill(os.Getpid(), syscall.SIGINT) // it cannot fail for oneself
		}
	}()
	return func() {
		signal.Stop(quits)
		close(quits)
	}
}
