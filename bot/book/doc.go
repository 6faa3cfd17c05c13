// Package book is the load book of a room: what was planned, who checked it,
// when it went into the press and how it came out.
//
// The book is append-only. An [Entry] says who said what of which load, when
// and on which revision; a [Load] is what its entries come to, one [Load.Apply]
// after the other. Nothing here reads a clock, a store or a message: the time
// is a parameter, the acts of a load ([Load.Hold], [Load.Measure], …) return
// the entry to be appended or a [*RefusedError] that says why not, and
// [Ledger] gathers the entries that one message makes.
//
// The ports for keeping it all stand in store.go: a [Store] records an inbound
// [Event] before it is acknowledged, and an [Outcome], the answer with all it
// changes, in one transaction.
package book
