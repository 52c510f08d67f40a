/**
 * Keeps the data folder: one SQLite file, every table and every SQL statement, one writer. It stays
 * a single package, so that a database handle never leaves it. A transaction that returned is on
 * the disk.
 */
package castwell.capture.store;
