// Package server gives the assistant to other terminals over SSH, and nothing else: no shell, no
// files, no forwarding.
//
//	os.Exit(server.Run(s)) // until it is told to stop
//
// A connection goes through the gate, which counts those that have not logged in; then through
// the library, which knows the keys; then its one channel is narrowed to what a terminal needs;
// and then it is a session, a run of the program on that terminal.
package server
