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
// that is set up already gets no new identity unless renew is set; the error is
// then nil if its device is vouched for, or can be with the configured recovery
// key. A recovery key that comes with an error holds all the same.
func Setup(ctx context.Context, c Config, renew bool) (done Done, err error) {
	if err := c.check(); err != nil {
		return Done{}, err
	}
	if c.Password == "" {
		return Done{}, ErrPassword
	}
	s, err := connect(ctx, c)
	if err != nil {
		return Done{}, err
	}
	defer func() { err = errors.Join(err, s.close()) }()
	m, err := openMachine(ctx, s)
	if err != nil {
		return Done{}, err
	}
	defer m.close()
	if !renew {
		has, vouched, err := established(ctx, s, m)
		if has || err != nil {
			return Done{Vouched: vouched}, err
		}
	}
	key, _, err := m.GenerateAndUploadCrossSigningKeysWithPassword(ctx, c.Password, "")
	if err != nil {
		return Done{}, fmt.Errorf("identity could not be published, run the set-up again: %w", err)
	}
	if err := m.SignOwnDevice(ctx, m.OwnIdentity()); err != nil {
		return Done{RecoveryKey: key}, fmt.Errorf("device could not be vouched for, start the bot once with the recovery key: %w", err)
	}
	if err := m.SignOwnMasterKey(ctx); err != nil {
		return Done{RecoveryKey: key}, fmt.Errorf("identity could not be signed, start the bot once with the recovery key: %w", err)
	}
	return Done{RecoveryKey: key}, nil
}

// established reports whether an identity vouches for the device, and whether
// that was seen to only now.
func established(ctx context.Context, s *session, m *machine) (has, now bool, err error) {
	has, verified, err := m.GetOwnVerificationStatus(ctx)
	switch {
	case err != nil:
		return false, false, fmt.Errorf("own identity is not to be had: %w", err)
	case !has || verified:
		return has, false, nil
	case s.cfg.RecoveryKey == "":
		return true, false, ErrIdentityExists
	}
	err = m.recover(ctx, s.cfg.RecoveryKey)
	return true, err == nil, err
}
