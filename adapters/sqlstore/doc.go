// Package sqlstore keeps the load book and the messages in an SQL database. It
// is the one schema and the one set of statements under the SQLite and the
// PostgreSQL adapter, which open a database, name their [Dialect] and add
// nothing else; apart from those two nothing imports it.
//
// Each change is one transaction. Who comes too late to change a load, a
// thread or a profile gets [book.ErrConflict] and has changed nothing.
package sqlstore
