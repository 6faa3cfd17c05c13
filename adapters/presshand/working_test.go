package main

import (
	"strings"
	"testing"
	"time"
)

func TestWhileWorking(t *testing.T) {
	said := make(chan bool, 2)
	done := whileWorking(0, func() { said <- true })
	<-said // or the test hangs
	done()
	whileWorking(time.Hour, func() { said <- true })()
	if len(said) > 0 {
		t.Error("said of work that was done at once")
	}
	if watched(&strings.Builder{}) {
		t.Error("nobody watches a buffer")
	}
}
