//go:build !js

package shelf

import (
	"errors"
	"net"

	"github.com/jackc/pgx/v5/pgconn"
	_ "github.com/jackc/pgx/v5/stdlib" // the driver named pgx
	"modernc.org/sqlite"               // and the one named sqlite
	sqlite3 "modernc.org/sqlite/lib"
)

// The drivers of both databases, and what their errors mean.

// states are what the codes of PostgreSQL mean (Appendix A of its manual).
var states = map[string]cause{
	"23505": taken,    // unique_violation
	"53100": full,     // disk_full
	"42501": readOnly, // insufficient_privilege
	"25006": readOnly, // read_only_sql_transaction
	"55P03": locked,   // lock_not_available
	"40P01": locked,   // deadlock_detected
	"XX001": damaged,  // data_corrupted
	"XX002": damaged,  // index_corrupted
	"58030": disk,     // io_error
}

// refusal says why a server cannot be asked at all: what it answered, or what came of asking; ok is false where it is something else
// that failed.
func refusal(err error) (answered bool, why string, ok bool) {
	var no *pgconn.ConnectError
	var server *pgconn.PgError
	var name *net.DNSError
	var line *net.OpError
	switch {
	case !errors.As(err, &no):
		return false, "", false
	case errors.As(err, &server):
		return true, server.Message, true
	case errors.As(err, &name):
		return false, name.Err, true
	case errors.As(err, &line):
		return false, line.Err.Error(), true
	}
	return false, no.Unwrap().Error(), true
}

func causeOf(err error) cause {
	var server *pgconn.PgError
	var file *sqlite.Error
	switch {
	case errors.As(err, &server):
		return states[server.Code]
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
