//go:build !goolm

package matrix

import "context"

// Encrypts says whether the program was built with encryption.
const Encrypts = false

func newCipher(context.Context, *session) (cipher, error) { return nil, nil }

// Setup is refused: there is nothing to set up without encryption.
func Setup(context.Context, Config, bool) (Done, error) {
	return Done{}, ErrNoEncryption
}
