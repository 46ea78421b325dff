//go:build !js

package shelf

import (
	"errors"

	"github.com/jackc/pgx/v5/pgconn"
	_ "github.com/jackc/pgx/v5/stdlib" // the driver named pgx
	"modernc.org/sqlite"               // and the one named sqlite
	sqlite3 "modernc.org/sqlite/lib"
)

// The drivers of both databases, and what their errors mean.

// uniqueViolation is PostgreSQL's code for a place that is taken.
const uniqueViolation = "23505"

func causeOf(err error) cause {
	var server *pgconn.PgError
	var file *sqlite.Error
	switch {
	case errors.As(err, &server) && server.Code == uniqueViolation:
		return taken
	case errors.As(err, &file):
		switch file.Code() & 0xff {
		case sqlite3.SQLITE_CONSTRAINT:
			return taken
		case sqlite3.SQLITE_FULL:
			return full
		case sqlite3.SQLITE_READONLY, sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_PERM:
			return readOnly
		case sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED:
			return locked
		case sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB:
			return damaged
		case sqlite3.SQLITE_IOERR:
			return disk
		}
	}
	return otherCause
}
