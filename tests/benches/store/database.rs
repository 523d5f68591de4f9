//! The same edits into a database: a row for each entry, a transaction for each edit, certain to outlast a power cut.

use std::path::Path;

use rusqlite::Connection;

use super::job_of_size::Row;

/// A job as a table of entries.
pub struct Database(Connection);

impl Database {
    /// With these entries in it.
    pub fn of(path: &Path, rows: &[Row]) -> Database {
        let mut open = Connection::open(path).unwrap();
        open.pragma_update(None, "journal_mode", "DELETE").unwrap();
        open.pragma_update(None, "synchronous", "FULL").unwrap();
        let table = "CREATE TABLE entries (kind TEXT, id INTEGER, body BLOB, PRIMARY KEY (kind, id)) WITHOUT ROWID";
        open.execute(table, []).unwrap();
        let all = open.transaction().unwrap();
        rows.iter().for_each(|row| put(&all, row));
        all.commit().unwrap();
        Database(open)
    }

    /// One edit.
    pub fn keep(&mut self, rows: &[Row]) {
        let edit = self.0.transaction().unwrap();
        rows.iter().for_each(|row| put(&edit, row));
        edit.commit().unwrap();
    }

    /// How many entries it holds.
    pub fn count(&self) -> usize {
        let count = self.0.query_row("SELECT count(*) FROM entries", [], |row| {
            row.get::<_, i64>(0)
        });
        count.unwrap() as usize
    }
}

fn put(open: &Connection, row: &Row) {
    let put =
        "INSERT INTO entries VALUES (?1, ?2, ?3) ON CONFLICT (kind, id) DO UPDATE SET body = ?3";
    let mut put = open.prepare_cached(put).unwrap();
    put.execute((row.kind, row.id.0.cast_signed(), row.body.as_bytes()))
        .unwrap();
}
