package store

import "github.com/jmoiron/sqlx"

// Handle lets tests look at the file behind the package's back.
func (db *DB) Handle() *sqlx.DB { return db.handle }

// The parts that tests check by themselves.
var (
	ApplicationID    = applicationID
	ProgressEvery    = progressEvery
	SweepFoods       = sweepFoods
	MigrationsOnDisk = files
)
