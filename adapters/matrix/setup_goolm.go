//go:build goolm

package matrix

import (
	"context"
	"errors"
	"fmt"
)

// Setup makes the identity that vouches for the account's device, and returns
// the recovery key, which is to be shown once and kept safe: with it, and only
// with it, a new device is vouched for after the store was lost. An account
// that is set up already gets no new identity unless renew is set; the key is
// then "" and the error nil if its device is vouched for, or can be with the
// configured recovery key.
func Setup(ctx context.Context, c Config, renew bool) (recoveryKey string, err error) {
	if err := c.check(); err != nil {
		return "", err
	}
	if c.Password == "" {
		return "", ErrPassword
	}
	s, err := connect(ctx, c)
	if err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, s.close()) }()
	m, err := openMachine(ctx, s)
	if err != nil {
		return "", err
	}
	defer m.close()
	if !renew {
		done, err := established(ctx, s, m)
		if done || err != nil {
			return "", err
		}
	}
	key, _, err := m.GenerateAndUploadCrossSigningKeysWithPassword(ctx, c.Password, "")
	if err != nil {
		return "", fmt.Errorf("identity could not be published, run the set-up again: %w", err)
	}
	if err := m.SignOwnDevice(ctx, m.OwnIdentity()); err != nil {
		return key, fmt.Errorf("device could not be vouched for, start the bot once with the recovery key: %w", err)
	}
	if err := m.SignOwnMasterKey(ctx); err != nil {
		return key, fmt.Errorf("identity could not be signed, start the bot once with the recovery key: %w", err)
	}
	return key, nil
}

// established reports whether nothing is left to be set up.
func established(ctx context.Context, s *session, m *machine) (bool, error) {
	has, verified, err := m.GetOwnVerificationStatus(ctx)
	switch {
	case err != nil:
		return false, fmt.Errorf("own identity is not to be had: %w", err)
	case !has:
		return false, nil
	case verified:
		return true, nil
	case s.cfg.RecoveryKey == "":
		return false, ErrIdentityExists
	}
	return true, m.recover(ctx, s.cfg.RecoveryKey)
}
