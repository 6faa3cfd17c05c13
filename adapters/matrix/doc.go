// Package matrix serves rooms of a Matrix homeserver, encrypted and plain ones.
//
// An [Account] reads what people say, hands what is meant for the bot to a
// desk, and sends what the desk has for it. It knows no question and no answer.
//
// Rules that hold everywhere in here:
//
//   - The sync token is saved after the events of a sync are in the inbox, so
//     that a process killed in between sees them again.
//   - An event that cannot be dealt with goes aside and is logged; it never
//     stops the sync.
//   - Nothing is sent in clear into a room that is encrypted, or ever was.
//   - A reply that may have arrived already is looked for in the room before it
//     is sent again: a homeserver forgets transaction ids when it restarts.
//   - One process at a time syncs and sends for an account: two would use the
//     same step of an encryption key twice.
//
// Encryption is the pure Go implementation of mautrix and needs the build tag
// goolm. Without it the package serves plain rooms and leaves encrypted ones.
package matrix
