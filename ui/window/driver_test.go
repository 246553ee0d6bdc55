package window

import "fyne.io/fyne/v2"

// queued is the test app with a driver that lets work from goroutines wait in a
// queue, as a real one does; Fyne's test driver runs it at once, beside the test.
type queued struct {
	fyne.App
	queue chan func()
}

// Driver is the test driver with the queue before it.
func (q queued) Driver() fyne.Driver { return queuedDriver{q.App.Driver(), q.queue} }

type queuedDriver struct {
	fyne.Driver
	queue chan func()
}

// DoFromGoroutine lets f wait until the test runs it.
func (d queuedDriver) DoFromGoroutine(f func(), wait bool) {
	if !wait {
		d.queue <- f
		return
	}
	done := make(chan struct{})
	d.queue <- func() { f(); close(done) }
	<-done
}
