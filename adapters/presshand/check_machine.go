package main

import (
	"context"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"runtime"
	"strings"
	"time"
)

// remark prints a line about what would work and had better be otherwise.
func (c *checking) remark(what, says string) {
	fmt.Fprintf(c.out, "note   %s: %s\n", what, oneLine(says))
}

// listen tries the address that health is told on. Where a presshand tells it
// already, serve is running, and check may be asked all the same.
func (c *checking) listen(ctx context.Context) {
	address := c.config.Listen
	if address == "" {
		c.say("listen", nil, "turned off")
		return
	}
	l, err := net.Listen("tcp", address)
	switch {
	case err == nil:
		c.say("listen", l.Close(), address+" is free")
	case toldByPresshand(ctx, address):
		c.remark("listen", "a presshand tells its health on "+address+" now; stop it before another is started with this configuration")
	default:
		c.say("listen", hint(fmt.Errorf("health cannot be told: %w", err), `give listen another address like 127.0.0.1:9417, or "" to turn it off`), "")
	}
}

// toldByPresshand reports whether the metrics at an address are ours.
func toldByPresshand(ctx context.Context, address string) bool {
	ctx, done := context.WithTimeout(ctx, 2*time.Second)
	defer done()
	if strings.HasPrefix(address, ":") {
		address = "localhost" + address
	}
	req, err := http.NewRequestWithContext(ctx, http.MethodGet, "http://"+address+"/metrics", nil)
	if err != nil {
		return false
	}
	r, err := http.DefaultClient.Do(req)
	if err != nil {
		return false
	}
	defer r.Body.Close()
	text, err := io.ReadAll(io.LimitReader(r.Body, 1<<20))
	return err == nil && strings.Contains(string(text), "\npresshand_")
}

// secretFiles remarks on secrets that other users of the machine can read.
func (c *checking) secretFiles() {
	if runtime.GOOS == "windows" { // its files have no such bits
		return
	}
	files := []string{c.config.StoreFile}
	if c.config.slack() {
		files = append(files, c.config.Slack.BotToken, c.config.Slack.AppToken)
	}
	if c.config.matrix() {
		m := c.config.Matrix
		files = append(files, m.Password, m.Token, m.RecoveryKey, m.StoreKey)
	}
	for _, file := range files {
		file = os.ExpandEnv(file)
		info, err := os.Stat(file) // one that is not there is told where it is read
		if err == nil && info.Mode().Perm()&0o044 != 0 {
			c.remark("secret", fmt.Sprintf("%s can be read by other users of this machine: chmod 600 it, as the user that serves", file))
		}
	}
}
