package main

import (
	"context"
	"errors"
	"fmt"

	"presshand/adapters/matrix"
)

// matrixSetupCmd makes the identity of a Matrix account.
type matrixSetupCmd struct {
	Config string `required:"" placeholder:"FILE" help:"The configuration that serve uses."`
	Renew  bool   `help:"Make a new identity even if the account has one: whoever verified the old one is warned."`
}

// Run makes the identity and prints its recovery key, which is told only here.
func (c *matrixSetupCmd) Run(ctx context.Context, s streams) error {
	conf, err := readConfig(c.Config)
	if err != nil {
		return err
	}
	if conf.Matrix == nil {
		return hint(errors.New("configuration has no [matrix] table"), "add one")
	}
	m, err := conf.readyForSetup()
	if err != nil {
		return err
	}
	done, err := matrix.Setup(ctx, m, c.Renew)
	if done.RecoveryKey != "" {
		fmt.Fprintf(s.out, "The recovery key of %s, told only now. Keep it safe, and give it to the bot as %s or in recovery_key_file:\n\n    %s\n\n",
			m.User, matrixRecoveryKey, done.RecoveryKey)
	}
	switch {
	case errors.Is(err, matrix.ErrNoEncryption):
		return hint(err, "build with -tags goolm")
	case err != nil:
		return fmt.Errorf("matrix account %s: %w", m.User, err)
	case done.Vouched:
		fmt.Fprintf(s.out, "%s is set up already. Its device is new and was vouched for with the recovery key.\n", m.User)
	case done.RecoveryKey == "":
		fmt.Fprintf(s.out, "%s is set up already. Nothing was changed.\n", m.User)
	}
	return nil
}
