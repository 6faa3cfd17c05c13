// Package adaptertest holds what every adapter of one port must pass.
//
// [Book] and its companions are for stores: each store's tests run them on
// stores of its own.
package adaptertest
