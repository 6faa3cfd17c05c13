package sqlite

// What the tests need of the inside.
var (
	DSN          = dsn
	OpenSettings = open
)
